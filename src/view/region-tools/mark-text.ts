import type { Mark } from './marks.ts';
import { actsOn } from './place-tools.ts';
import { regionTexts } from './strings.ts';

const texts = regionTexts.marks;

/** What a mark is, and what a click with the tool does to it. */
export function markText(mark: Mark, tool: string): string {
  const acts = actsOn(tool, mark);
  switch (mark.is) {
    case 'gap':
      return texts.gap(mark.gap.widthMm, mark.gap.partsMm2);
    case 'edit': {
      const what = texts.edit[mark.edit.does];
      return acts ? `${what} ${texts.takesAway}` : what;
    }
    case 'wall': {
      const { widthMm } = mark.wall;
      return mark.openedBy === null ? texts.closed(widthMm, acts) : texts.opened(widthMm, acts);
    }
  }
}
