import { type CutDrawing, cuttable, withCuts } from './cuts.ts';
import { lineOf, SIDE } from './drawings.ts';
import { type Choice, regionsOf } from './find.ts';
import { roughened } from './rough.ts';
import { type Score, scoreOf } from './score.ts';
import { LINE, SMALLEST, type Truth, truthOf } from './truth.ts';

export const STROKES = [0.3, 1] as const;
/** Sets of trials; the second shows what the widest gap alone takes for openings, with nothing cut. */
export const SETS = ['uncut', 'uncut, widest gap', 'cut 4', 'cut 10', 'cut 20', 'rough'] as const;
export type SetName = (typeof SETS)[number];

/**
 * The gap is the opening's width and this margin, px: an opening cut in a raster, at a slant, through a bowed stroke,
 * is a pixel or two wider than it says. On the tuning half a margin of 1 does as well, and 3 takes twice as many places
 * of the drawings for openings of 10 px.
 */
const MARGIN = 2;
/** Rough lines move an opening's edges by up to some 4 px each. */
const ROUGH_MARGIN = 8;

const PLANS: Record<SetName, { cut: number | null } & Choice> = {
  uncut: { cut: null, gap: MARGIN, roughness: 0 },
  'uncut, widest gap': { cut: null, gap: 20 + MARGIN, roughness: 0 },
  'cut 4': { cut: 4, gap: 4 + MARGIN, roughness: 0 },
  'cut 10': { cut: 10, gap: 10 + MARGIN, roughness: 0 },
  'cut 20': { cut: 20, gap: 20 + MARGIN, roughness: 0 },
  rough: { cut: 10, gap: 10 + ROUGH_MARGIN, roughness: 3.5 },
};

/** Where the line is thicker than this many strokes of the usual width, it is no stroke to cut through. */
const THICKEST = 1.5;
/** The usual stroke, 2 of the 72 units a drawing is wide. */
const STROKE = (2 / 72) * SIDE;

/** A drawing, as it was given to the node, and what came of it. */
export interface Trial extends CutDrawing {
  set: SetName;
  truth: Truth;
  found: Uint32Array;
  score: Score;
}

/** All sets of one drawing at one stroke width; none where it closes off fewer than two areas. */
export async function trialsOf(name: string, strokes: number, seed: number): Promise<Trial[]> {
  const line = await lineOf(name, strokes);
  const truth = truthOf(line);
  if (truth.closed < 2) return [];
  const places = cuttable(line, truth, Math.round(THICKEST * STROKE * strokes));
  const trials: Trial[] = [];
  for (const set of SETS) {
    const plan = PLANS[set];
    const cut = plan.cut === null ? { line, cuts: [] } : withCuts(places, plan.cut, seed);
    const given = set === 'rough' ? roughened(cut.line, truth, seed) : { line: cut.line, truth };
    const found = await regionsOf(given.line, plan);
    const score = scoreOf({
      truth: given.truth.labels,
      count: truth.count,
      found,
      isFree: (pixel) => given.line.data[pixel]! < LINE,
      smallest: SMALLEST,
      cuts: cut.cuts.map(({ between }) => between),
    });
    trials.push({ set, cuts: cut.cuts, ...given, found, score });
  }
  return trials;
}
