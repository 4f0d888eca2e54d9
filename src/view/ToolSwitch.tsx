import { useView } from '../store/hooks.ts';
import styles from './FootControls.module.css';
import { regionTools, useRegionsShow } from './region-tools/region-tools.ts';
import { regionTexts } from './region-tools/strings.ts';
import { strings } from './strings.ts';
import { ToolButton } from './ToolButton.tsx';
import { takeTool, takeUsualTool, usualTools } from './tools.ts';

/** Which tool a hand over the print works with; those for regions behind a switch of their own. */
export function ToolSwitch() {
  const atRegions = useView(({ showing }) => showing.view === 'regions');
  const open = useRegionsShow();
  return (
    <fieldset className={styles.group} aria-label={strings.tools.label}>
      {usualTools.map((tool) => (
        <ToolButton key={tool.id} tool={tool} />
      ))}
      {!atRegions && (
        <button
          type="button"
          aria-expanded={open}
          title={regionTexts.openHelp}
          onClick={() => (open ? takeUsualTool() : takeTool(regionTools[0]))}
        >
          {regionTexts.open}
          <svg className={styles.fold} viewBox="0 0 10 10" aria-hidden="true">
            <path d={open ? 'M1 3l4 4 4-4' : 'M1 7l4-4 4 4'} />
          </svg>
        </button>
      )}
    </fieldset>
  );
}
