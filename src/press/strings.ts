import type { SlackBorder } from './slack.ts';
import type { TrapReason } from './trap-rule.ts';

/** Why a border is trapped as it is, or not. */
export const trapReasons: Readonly<Record<TrapReason, string>> = {
  'lighter-spreads': 'The lighter colour spreads under the darker, so that the shape of the darker stays.',
  'under-opaque':
    'The lighter ink is opaque and prints later: what was printed before it spreads under it and is hidden.',
  'held-back':
    'Beside bare paper the supporting inks stay back, so that only the darkest ink makes the edge.',
  'both-bare': 'Nothing prints on either side.',
  'one-plate': 'Both sides differ in one plate at most, so that no gap can open.',
  'against-paper': 'One side is bare paper, and the other has no dark ink that could make the edge alone.',
  'shared-ink': 'Both sides share an ink that hides a gap between the others.',
  'set-by-hand': 'Both sides share an ink; the width was set for this border all the same.',
};

const hundredth = new Intl.NumberFormat('en', { maximumFractionDigits: 2 });
const mm = (value: number) => `${hundredth.format(value)} mm`;

/** What shows at a border when a plate drifts, as a sentence. */
export function slackSentence(
  { plate, shows, against }: Pick<SlackBorder, 'plate' | 'shows' | 'against'>,
  slackMm: number,
  driftMm: number,
): string {
  const what = shows === 'paper' ? 'Bare paper shows' : 'Another overprint shows';
  const where = { fill: 'between two fills', line: 'beside the line', mark: 'at an edge within a region' };
  return `${what} ${where[against]} when plate ${plate} drifts more than ${mm(slackMm)}; it may drift ${mm(driftMm)} there.`;
}
