import { useView } from '../store/hooks.ts';
import styles from './FootControls.module.css';
import { regionTools, useRegionsShow } from './region-tools/region-tools.ts';
import { regionTexts } from './region-tools/strings.ts';
import { strings } from './strings.ts';
import { surfaceTexts } from './surface-tools/strings.ts';
import { toolsOf, useSurfaceSet } from './surface-tools/surface-tools.ts';
import { ToolButton } from './ToolButton.tsx';
import { takeTool, takeUsualTool, usualTools } from './tools.ts';

interface More {
  title: string;
  help: string;
  open: boolean;
  onOpen(): void;
}

/** A switch that shows more tools in a row of their own. */
function MoreTools({ title, help, open, onOpen }: More) {
  return (
    <button
      type="button"
      aria-expanded={open}
      title={help}
      onClick={() => (open ? takeUsualTool() : onOpen())}
    >
      {title}
      <svg className={styles.fold} viewBox="0 0 10 10" aria-hidden="true">
        <path d={open ? 'M1 3l4 4 4-4' : 'M1 7l4-4 4 4'} />
      </svg>
    </button>
  );
}

/** Which tool a hand over the print works with; those for regions and for the surface behind switches of their own. */
export function ToolSwitch() {
  const atRegions = useView(({ showing }) => showing.view === 'regions');
  const regionsShow = useRegionsShow();
  const surface = useSurfaceSet();
  return (
    <fieldset className={styles.group} aria-label={strings.tools.label}>
      {usualTools.map((tool) => (
        <ToolButton key={tool.id} tool={tool} />
      ))}
      {!atRegions && (
        <MoreTools
          title={regionTexts.open}
          help={regionTexts.openHelp}
          open={regionsShow}
          onOpen={() => takeTool(regionTools[0])}
        />
      )}
      <MoreTools
        title={surfaceTexts.open}
        help={surfaceTexts.openHelp}
        open={surface !== null}
        onOpen={() => takeTool(toolsOf('marks')[0])}
      />
    </fieldset>
  );
}
