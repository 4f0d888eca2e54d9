import foot from '../FootControls.module.css';
import { ToolButton } from '../ToolButton.tsx';
import { Begun } from './Begun.tsx';
import styles from './RegionToolRow.module.css';
import { regionTools, useRegionsShow } from './region-tools.ts';
import { regionTexts as texts } from './strings.ts';

/** The tools that choose and mend regions, while regions are worked at. */
export function RegionToolRow() {
  if (!useRegionsShow()) return null;
  return (
    <div className={styles.row}>
      <fieldset className={foot.group} aria-label={texts.label}>
        {regionTools.map((tool) => (
          <ToolButton key={tool.id} tool={tool} />
        ))}
        <Begun />
      </fieldset>
    </div>
  );
}
