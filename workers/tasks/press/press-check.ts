import type { Complaint } from '../../../src/graph/complaint.ts';
import type { End, Job } from '../../../src/graph/job.ts';
import { wireInto } from '../../../src/graph/order.ts';
import type { Press } from '../../../src/graph/press.ts';
import {
  marginFaults,
  type PlateGrid,
  paleFault,
  type SheetInPress,
  solidFaults,
  totalInkFaults,
} from '../../../src/press/check/grid-faults.ts';
import { keyLineFaults, thinFault } from '../../../src/press/check/line-faults.ts';
import { bandFaults, meshFaults, moireFaults } from '../../../src/press/check/screen-faults.ts';
import { identicalFault, polarityFault, sliverFaults } from '../../../src/press/check/shape-faults.ts';
import { tintFaults } from '../../../src/press/check/tint-faults.ts';
import { marked } from '../../../src/press/meant.ts';
import { figureOf, pressOf } from '../../../src/press/profiles.ts';
import { BARE_SHEET, sheetPixels } from '../../../src/press/sheet-pixels.ts';
import { slackByPlate } from '../../../src/press/slack-faults.ts';
import { toleranceOf } from '../../../src/press/tolerance.ts';
import type { Tools } from '../../engine/evaluation.ts';
import type {
  DrawingValue,
  PlatesValue,
  RecipesValue,
  RegionsValue,
  SheetValue,
  Value,
} from '../../engine/values.ts';
import { mmToPx, type Plane, pxToMm } from '../../kernels/plane.ts';
import { DEPTH_STEPS, depthPlane } from '../depth-plane.ts';
import { feeding, firstOf, upstreamKind } from '../job-ends.ts';
import { lineWidths } from '../line-widths.ts';
import { registerSlack } from '../register-slack.ts';
import { type Rendered, render } from '../render.ts';
import type { TaskContext } from '../task.ts';

export interface PressCheckInput {
  job: Job;
  /** Instead of the job's own. */
  press?: Press;
}

/**
 * What a printer would complain of: the report of a render without files, and the faults of its plates on the press,
 * those that the job says are meant marked so. Without a press only what holds on any is looked for.
 *
 * @throws BadInput when the graph delivers nothing
 */
export async function pressCheck(
  { job, press: chosen }: PressCheckInput,
  context: TaskContext,
): Promise<Pick<Rendered, 'report'>> {
  const { report } = await render({ job, formats: [], scale: 1 }, context);
  const press = chosen ?? job.press ?? pressOf('own');
  const { engine, flag, onProgress } = context;
  const ends = endsOf(job);
  const wanted = Object.entries(ends).filter((entry): entry is [string, End] => entry[1] !== null);
  const run = await engine.evaluate(
    { job, targets: wanted.map(([, end]) => end), scale: 1 },
    flag,
    onProgress,
  );
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const value = (name: string): Value | undefined =>
      run.values[wanted.findIndex(([other]) => other === name)];
    const faults = await faultsOf(
      {
        plates: value('plates') as PlatesValue,
        shapes: value('shapes') as PlatesValue,
        line: value('line') as DrawingValue | undefined,
        regions: value('regions') as RegionsValue | undefined,
        recipes: value('recipes') as RecipesValue | undefined,
        sheet: value('sheet') as SheetValue | undefined,
      },
      press,
      tools,
    );
    const slack = await slackOf(job, press, context);
    const complaints = [...report.complaints, ...marked([...faults, ...slack], job.meant)];
    return { report: { ...report, complaints } };
  } finally {
    tidy();
    run.release();
  }
}

/** Borders that do not hold on this press, where it is known how far it drifts and fills are printed. */
async function slackOf(job: Job, press: Press, context: TaskContext): Promise<Complaint[]> {
  const fills = upstreamKind(job, firstOf(job, 'press-file')!, 'fill-plates');
  if (figureOf(press, 'toleranceAlongMm') === null || fills === null) return [];
  const tolerance = toleranceOf({ graph: job.graph, press });
  const { report } = await registerSlack({ job, tolerance }, context);
  return slackByPlate(report, tolerance);
}

/** Kinds that break fills up into grain or dots: thin line is looked for before them. */
const SURFACES = ['plate-grain', 'halftone'];

function endsOf(job: Job): Record<string, End | null> {
  const press = firstOf(job, 'press-file')!;
  const fill = upstreamKind(job, press, 'fill-plates');
  const line = upstreamKind(job, press, 'key-line');
  const plates = feeding(job, press, 'plates');
  return {
    plates,
    shapes: beforeSurface(job, plates),
    line: feeding(job, line, 'drawing'),
    regions: feeding(job, fill, 'regions'),
    recipes: feeding(job, fill, 'recipes'),
    sheet: feeding(job, press, 'sheet'),
  };
}

/** The plates as they were before grain and dots. */
function beforeSurface(job: Job, end: End | null): End | null {
  if (end === null) return null;
  const node = job.graph.nodes.find(({ id }) => id === end.node);
  if (!node || !SURFACES.includes(node.kind)) return end;
  return beforeSurface(job, wireInto(job.graph, node.id, 'plates')?.from ?? null) ?? end;
}

interface Facts {
  plates: PlatesValue;
  shapes: PlatesValue;
  line: DrawingValue | undefined;
  regions: RegionsValue | undefined;
  recipes: RecipesValue | undefined;
  sheet: SheetValue | undefined;
}

async function faultsOf(facts: Facts, press: Press, tools: Tools): Promise<Complaint[]> {
  const { plates, shapes, line, regions, recipes } = facts;
  const grids = await Promise.all(
    plates.plates.map(({ id, coverage }) => gridOf(id, coverage, plates.ppi, tools)),
  );
  const onPress = sheetOf(facts);
  const faults = grids.flatMap((grid) => [
    ...solidFaults(grid, press, onPress),
    ...marginFaults(grid, press, onPress),
  ]);
  faults.push(...totalInkFaults(grids, press));
  if (regions)
    faults.push(
      ...sliverFaults(
        regions.table.map((row, i) => ({ ...row, id: regions.ids[i]! })),
        press,
      ),
    );
  if (regions && recipes) faults.push(...tintFaults(printed(regions, recipes), press));
  for (const { id, coverage } of shapes.plates) {
    faults.push(...(await thinOf(id, coverage, shapes.ppi, press, tools)));
    const greatest = (await tools.whole('histogram', { data: coverage.data })).findLastIndex(
      (count) => count > 0,
    );
    faults.push(...paleFault(id, greatest, Math.max(0, ...tintsOf(recipes, id)) === 100));
  }
  faults.push(...(await identical(plates, tools)));
  faults.push(...screenFaults(facts, press));
  if (line) faults.push(...(await lineFaults(line, shapes, plates, press, tools)));
  return faults;
}

function screenFaults({ plates, regions, recipes }: Facts, press: Press): Complaint[] {
  const screened = plates.plates.flatMap(({ id, screen }) => (screen ? [{ id, screen }] : []));
  const fading = regions && recipes ? printed(regions, recipes) : [];
  return [
    ...moireFaults(screened),
    ...meshFaults(screened, press),
    ...bandFaults(screened, fading, plates.ppi),
  ];
}

function tintsOf(recipes: RecipesValue | undefined, plate: string): number[] {
  return (recipes?.recipes ?? []).map((recipe) => recipe?.[plate] ?? 0);
}

function printed(regions: RegionsValue, recipes: RecipesValue) {
  return regions.table.map(({ areaMm2, anchorMm }, i) => ({
    id: regions.ids[i]!,
    areaMm2,
    anchorMm,
    recipe: recipes.recipes[i] ?? {},
    fade: recipes.fades?.[i] ?? null,
  }));
}

function sheetOf({ plates, line, sheet }: Facts): SheetInPress {
  const { width, height } = plates.plates[0]!.coverage;
  const settings = sheet?.settings ?? BARE_SHEET;
  const labels = { title: '', names: plates.plates.map(({ ink }) => ink.name) };
  const { plan } = sheetPixels(settings, {
    width,
    height,
    ppi: plates.ppi,
    artAt: line?.artAt ?? 'trim',
    labels,
  });
  return { plan, feedEdge: settings.feedEdge, assumed: sheet === undefined };
}

async function gridOf(plate: string, from: Plane, ppi: number, tools: Tools): Promise<PlateGrid> {
  const scale = Math.max(1, Math.round(mmToPx(1, ppi)));
  const [width, height] = [Math.ceil(from.width / scale), Math.ceil(from.height / scale)];
  const to = tools.plane(width, height);
  await tools.bands('reduceCoverage', { from, to, scale }, height);
  const data = to.data.slice();
  tools.free(to.data);
  return { plate, cellMm: pxToMm(scale, ppi), width, height, data };
}

const INK = { lowest: 128, highest: 255 };
const BARE = { lowest: 0, highest: 127 };

/** A line that is thinner by less than half a pixel is drawn no thinner. */
const HALF_PX = 0.5;

async function thinOf(
  plate: string,
  coverage: Plane,
  ppi: number,
  press: Press,
  tools: Tools,
): Promise<Complaint[]> {
  const faults: Complaint[] = [];
  for (const [what, figure, around] of [
    ['positive', 'leastPositiveMm', BARE],
    ['reverse', 'leastReverseMm', INK],
  ] as const) {
    const least = figureOf(press, figure);
    if (least === null) continue;
    const leastPx = mmToPx(least, ppi);
    const limit = Math.ceil(leastPx / 2) + 2;
    const depth = await depthPlane(coverage, around, limit, tools);
    const found = await tools.whole('thinRuns', {
      depth,
      perPx: DEPTH_STEPS / limit,
      leastPx: leastPx - HALF_PX,
      shortestPx: 1.5 * leastPx,
    });
    tools.free(depth.data);
    const mm = (px: number) => pxToMm(px, ppi);
    faults.push(
      ...thinFault(
        {
          plate,
          what,
          count: found.count,
          thinnestMm: mm(found.thinnestPx),
          lengthMm: mm(found.lengthPx),
          placeMm: [mm(found.longest[0] + 0.5), mm(found.longest[1] + 0.5)],
        },
        press,
      ),
    );
  }
  return faults;
}

async function identical({ plates }: PlatesValue, tools: Tools): Promise<Complaint[]> {
  const means = await Promise.all(plates.map(({ coverage }) => tools.whole('mean', { data: coverage.data })));
  return plates.flatMap((plate, i) => {
    const twin = plates.findIndex(
      (other, k) =>
        k < i &&
        means[k] === means[i] &&
        means[i]! > 0 &&
        sameBytes(other.coverage.data, plate.coverage.data),
    );
    return twin < 0 ? [] : [identicalFault(plates[twin]!.id, plate.id)];
  });
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** The coarsest ruling of the plates that have one. */
function rulingOf({ plates }: PlatesValue): number | null {
  const rulings = plates.flatMap(({ screen }) => screen?.lpi ?? []);
  return rulings.length === 0 ? null : Math.min(...rulings);
}

async function lineFaults(
  line: DrawingValue,
  shapes: PlatesValue,
  plates: PlatesValue,
  press: Press,
  tools: Tools,
): Promise<Complaint[]> {
  const widths = await lineWidths(line, tools);
  const percent = (mean: number | null) => ((mean ?? 0) * 100) / 255;
  const rows = await Promise.all(
    shapes.plates.map(async ({ id, coverage }) => ({
      id,
      onLine: percent(await tools.whole('meanUnder', { plane: coverage, mask: line.line })),
      all: percent(await tools.whole('mean', { data: coverage.data })),
    })),
  );
  const tintOf = Object.fromEntries(rows.map(({ id, onLine }) => [id, onLine]));
  return [
    ...keyLineFaults({ widthMm: widths?.middle ?? null, tintOf }, press, rulingOf(plates)),
    ...rows.flatMap(({ id, onLine, all }) => (widths ? polarityFault(id, onLine, all) : [])),
  ];
}
