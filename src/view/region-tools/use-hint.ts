import { useView } from '../../store/hooks.ts';
import { useDesk } from '../desk-store.ts';
import { surfaceTools } from '../surface-tools/surface-tools.ts';
import { chooseTool } from './choose-tool.ts';
import { markText } from './mark-text.ts';
import { regionTools } from './region-tools.ts';
import { useMarks } from './shown-marks.ts';
import { regionTexts as texts } from './strings.ts';
import { useUnfinished } from './unfinished-store.ts';

/**
 * What to tell of the hand at the regions: the path it has begun, the mark it is at, or what its tool does. Null
 * where a region has more to tell.
 */
export function useHint(): string | null {
  const taken = useView((state) => state.tool);
  const hovered = useView((state) => state.hovered);
  const key = useDesk((state) => state.mark);
  const marks = useMarks();
  const begun = useUnfinished();
  const drags = useView((state) => state.handMoves);
  if (begun?.tool === taken && !drags)
    return begun.finish ? texts.unfinished.path(begun.points.length) : texts.unfinished.join;
  const mark = key === null ? undefined : marks.find((each) => each.key === key);
  if (mark) return markText(mark, taken);
  const over = surfaceTools.find(({ id }) => id === taken);
  if (over) return over.help;
  const tool = regionTools.find(({ id }) => id === taken);
  return tool && (hovered === null || tool !== chooseTool) ? tool.help : null;
}
