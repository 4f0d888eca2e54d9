import { parseArgs } from 'node:util';
import { HARD, type Half, isStroked, namesOf, svgOf } from './regions/drawings.ts';
import { hasFailed, writeFailure } from './regions/failures.ts';
import { type Score, totalOf } from './regions/score.ts';
import { SETS, type SetName, STROKES, trialsOf } from './regions/sets.ts';

/**
 * How well regions are found on the line drawings of the npm package `openmoji` (CC BY-SA 4.0): uncut, with openings
 * cut through their lines, and roughened. True regions are the areas that the uncut drawing closes off. Settings were
 * chosen on the tuning half alone; the held-out half is the claim. Skipped: drawings without a stroke, those that close
 * off fewer than two areas, and all skin tones but the first.
 */
const { values } = parseArgs({
  options: { drawings: { type: 'string', default: '100' }, failures: { type: 'string' } },
});
const most = Number(values.drawings);

type Scores = Record<SetName, Score[]>;

async function scoresOf(names: readonly string[], strokes: number, wanted: number): Promise<Scores> {
  const scores = Object.fromEntries(SETS.map((set) => [set, [] as Score[]])) as Scores;
  for (const [seed, name] of names.entries()) {
    if (scores.uncut.length === wanted) break;
    if (!isStroked(svgOf(name, 'black'))) continue;
    for (const trial of await trialsOf(name, strokes, seed)) {
      scores[trial.set].push(trial.score);
      if (values.failures && hasFailed(trial)) writeFailure(values.failures, name, strokes, trial);
    }
    process.stderr.write(`\r${scores.uncut.length} of ${wanted} `);
  }
  return scores;
}

function printTable(title: string, scores: Scores, strokes: number): void {
  console.log(`\n${title}, strokes x${strokes}\n`);
  console.log('| set | drawings | regions | cuts | leaks % | IoU >= .95 % | surplus each | lost |');
  console.log('|---|---|---|---|---|---|---|---|');
  for (const set of SETS) {
    const { drawings, regions, cuts, leaksPercent, goodPercent, surplusEach, lost } = totalOf(scores[set]);
    const figures = [leaksPercent.toFixed(2), goodPercent.toFixed(1), surplusEach.toFixed(2), lost];
    console.log(`| ${[set, drawings, regions, cuts, ...figures].join(' | ')} |`);
  }
}

for (const half of ['tuning', 'held-out'] satisfies Half[])
  for (const strokes of STROKES) printTable(half, await scoresOf(namesOf(half), strokes, most), strokes);
for (const strokes of STROKES) printTable('hard set', await scoresOf(HARD, strokes, HARD.length), strokes);
