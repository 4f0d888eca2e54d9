import { useView } from '../store/hooks.ts';
import styles from './FootControls.module.css';
import { strings } from './strings.ts';
import { takeTool, tools } from './tools.ts';

/** Which tool a hand over the print works with. */
export function ToolSwitch() {
  const taken = useView((state) => state.tool);
  return (
    <fieldset className={styles.group} aria-label={strings.tools.label}>
      {tools.map((tool) => (
        <button
          key={tool.id}
          type="button"
          aria-pressed={tool.id === taken}
          aria-keyshortcuts={tool.key.toUpperCase()}
          title={tool.help}
          onClick={() => takeTool(tool)}
        >
          {tool.title}
        </button>
      ))}
    </fieldset>
  );
}
