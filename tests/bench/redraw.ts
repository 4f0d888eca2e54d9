import type { Plane } from '../../workers/kernels/plane.ts';
import { localRegions } from '../unit/support/local-regions.ts';
import { sharedPlane } from './pictures.ts';
import { pageLine, pagesOf } from './redraw/page.ts';
import { added, NOTHING, scoreOf, type Tally } from './redraw/score.ts';
import { redrawn, type Warp } from './redraw/warp.ts';
import { type Half, SIDE } from './regions/drawings.ts';

const PPI = 254;
const STILL: Warp = { wobble: 0, scale: 1, turnDeg: 0, shift: [0, 0] };

interface Trial {
  name: string;
  /** The page as it is drawn anew, before it is warped. */
  page(names: readonly string[]): Promise<Plane>;
  warp(page: number): Warp;
}

const plain = (names: readonly string[]) => pageLine(names, 1);
const turned = (page: number) => (page % 2 === 0 ? 1 : -1);

const TRIALS: readonly Trial[] = [
  ...[2, 5, 10, 15].map((wobble) => ({
    name: `wobble ${wobble} px, scale +-3 %`,
    page: plain,
    warp: (page: number) => ({ ...STILL, wobble, scale: 1 + 0.03 * turned(page) }),
  })),
  {
    name: 'rotation +-3 degrees',
    page: plain,
    warp: (page) => ({ ...STILL, wobble: 3, turnDeg: 3 * turned(page) }),
  },
  {
    name: 'shift 60 px',
    page: plain,
    warp: (page) => ({ ...STILL, wobble: 3, shift: [60 * turned(page), -35] }),
  },
  { name: 'lines 0.6 as wide', page: (names) => pageLine(names, 0.6), warp: () => ({ ...STILL, wobble: 3 }) },
  {
    name: 'a drawing deleted',
    page: (names) => pageLine(names, 1, 4),
    warp: () => ({ ...STILL, wobble: 3 }),
  },
  {
    name: 'strokes added',
    page: async (names) => ruled(await plain(names)),
    warp: () => ({ ...STILL, wobble: 3 }),
  },
  { name: 'crop', page: plain, warp: () => ({ ...STILL, wobble: 3, shift: [150, 90] }) },
];

/** The page with three straight lines across it. */
function ruled(line: Plane): Plane {
  const out = sharedPlane(line.width, line.height);
  out.data.set(line.data);
  for (const y of [200, 610, 1010]) out.data.fill(255, y * SIDE, (y + 5) * SIDE);
  return out;
}

const regionsOf = async (line: Plane) =>
  (await localRegions(line, PPI, { gapMm: 0, smallestMm2: 1 })).regions;

async function run(half: Half, pages: number): Promise<void> {
  const names = pagesOf(half, pages);
  const olds = await Promise.all(
    names.map(async (each) => {
      const line = await plain(each);
      return { line, regions: await regionsOf(line) };
    }),
  );
  const percent = (part: number, of: number) => (of === 0 ? '-' : ((100 * part) / of).toFixed(1));
  console.log(`\n${half}, ${pages} pages of nine drawings, ${SIDE} px\n`);
  console.log('| redraw | regions | right % | by area % | under 400 px % | seed point % | classes % |');
  console.log('|---|---|---|---|---|---|---|');
  for (const { name, page, warp } of TRIALS) {
    let sum: Tally = NOTHING;
    for (const [i, before] of olds.entries()) {
      const { line, from } = redrawn(await page(names[i]!), warp(i), 100 + i);
      sum = added(sum, await scoreOf(before, { line, regions: await regionsOf(line) }, from));
    }
    const cells = [
      sum.regions,
      percent(sum.right, sum.regions),
      percent(sum.areaRight, sum.area),
      percent(sum.smallRight, sum.small),
      percent(sum.seedRight, sum.regions),
      percent(sum.classesRight, sum.classes),
    ];
    console.log(`| ${name} | ${cells.join(' | ')} |`);
  }
}

const half = process.argv.includes('--tuning') ? 'tuning' : 'held-out';
const given = process.argv.indexOf('--pages');
await run(half, given < 0 ? 6 : Number(process.argv[given + 1]));
