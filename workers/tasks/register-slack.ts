import type { Job } from '../../src/graph/job.ts';
import { screenOf } from '../../src/ink/screen.ts';
import { paperStock } from '../../src/nodes/paper-stock.ts';
import type { SlackBorder, SlackLeast, SlackReport, SlackWay, Tolerance } from '../../src/press/slack.ts';
import { toleranceOf } from '../../src/press/tolerance.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { DrawingValue, PlatesValue, RegionsValue } from '../engine/values.ts';
import { type LabelPlane, mmToPx, type Plane, pxToMm } from '../kernels/plane.ts';
import { MOST_REACH, offsetOf } from '../kernels/slack.ts';
import { SECTORS, type SlackGroups, type SlackPoints } from '../kernels/slack-points.ts';
import { artworkEnds } from './artwork-plates.ts';
import { firstOf } from './job-ends.ts';
import { mm3 } from './report-parts.ts';
import { drawSlack, type SlackMap } from './slack-map.ts';
import { modelOf, type PlateFaults, type Shown, shownBy } from './slack-visible.ts';
import type { TaskContext } from './task.ts';

/** Coverage from which a plate counts as printing: less is the foot of a soft edge, or a tint nobody sees. */
const LEAST = 20;
/** How far is looked by default, mm: what no press drifts beyond. */
const REACH_MM = 2;

export interface RegisterSlackInput {
  job: Job;
  /** Farther than this nothing is looked for; 2 mm when left out. */
  reachMm?: number;
  /** What the map is drawn for; the job's own when left out. */
  tolerance?: Tolerance;
}

export interface RegisterSlack {
  report: SlackReport;
  /** Every place where a fault first shows, to draw over the print. */
  map: SlackMap;
}

/**
 * How far each plate may drift before bare paper or another overprint shows: at every border between fills, and of
 * line against fill. From exact distances on the plates of fills and lines at full size; marks that come later, grain
 * and screens are left out.
 *
 * @throws BadInput when no plates of fills reach the Press file
 */
export async function registerSlack(
  { job, reachMm = REACH_MM, tolerance = toleranceOf(job) }: RegisterSlackInput,
  context: TaskContext,
): Promise<RegisterSlack> {
  const { engine, flag, onProgress } = context;
  const ends = artworkEnds(job);
  const targets = [ends.plates, ends.regions, ...(ends.line ? [ends.line] : [])];
  const run = await engine.evaluate({ job, targets, scale: 1 }, flag, onProgress);
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const [plates, regions, drawing] = run.values as [PlatesValue, RegionsValue, DrawingValue?];
    const { lab, surface } = paperStock.settings.parse(settingsOf(job, paperStock.kind));
    const reach = Math.min(MOST_REACH, Math.floor(mmToPx(reachMm, plates.ppi)));
    const shown = shownBy(plates, modelOf(plates, { lab, surface }), LEAST);
    const { width, height } = regions.labels;
    const planes = plates.plates.map(({ coverage }) => coverage);
    const sets = new Uint16Array(tools.bytes(width * height * 2).buffer);
    await tools.bands('plateSets', { plates: planes, least: LEAST, out: sets }, height);
    const edges = tools.bytes(width * height);
    await tools.bands('setEdges', { sets, width, height, out: edges }, height);
    const search = { plates, labels: regions.labels, line: drawing?.line ?? null, reach, sets, edges };
    const faults: PlateFaults[] = [];
    for (const [plate] of planes.entries()) {
      onProgress({ node: ends.plates.node, done: plate, of: planes.length });
      const points = await pointsOf(search, plate, tools);
      faults.push({ points, shown: shownByGroup(points, plate, width, shown) });
    }
    const report = reportOf(faults, plates, regions, reach);
    return { report, map: drawSlack(faults, planes[0]!, plates.ppi, tolerance) };
  } finally {
    tidy();
    run.release();
  }
}

function settingsOf(job: Job, kind: string): Job['graph']['nodes'][number]['settings'] {
  return job.graph.nodes.find(({ id }) => id === firstOf(job, kind))?.settings ?? {};
}

interface Search {
  plates: PlatesValue;
  labels: LabelPlane;
  line: Plane | null;
  reach: number;
  sets: Uint16Array;
  edges: Uint8Array;
}

async function pointsOf(search: Search, plate: number, tools: Tools): Promise<SlackPoints> {
  const { plates, labels, line, reach, sets, edges } = search;
  const { coverage } = plates.plates[plate]!;
  const { width, height } = coverage;
  const { data } = coverage;
  const toChange = tools.bytes(width * height);
  await tools.bands('toChange', { data, width, height, least: LEAST, limit: reach, out: toChange }, width);
  const found = new Uint16Array(tools.bytes(width * height * 2).buffer);
  await tools.bands('slack', { sets, edges, width, height, plate, toChange, reach, out: found }, height);
  tools.free(toChange);
  const points = await tools.whole('slackPoints', { found, sets, labels: labels.data, line, width });
  tools.free(found);
  return points;
}

function shownByGroup(
  { groups }: SlackPoints,
  plate: number,
  width: number,
  shown: ReturnType<typeof shownBy>,
): (Shown | null)[] {
  return [...groups.here.keys()].map((group) => {
    const [way] = waysOf(groups, group);
    const [dx, dy] = offsetOf(way!.offset);
    return shown(plate, way!.at, way!.at + dy * width + dx);
  });
}

/** The least drifts of a group, the shortest first. */
function waysOf({ place, offset }: SlackGroups, group: number): { at: number; offset: number; px: number }[] {
  const slots = Array.from({ length: SECTORS }, (_, k) => group * SECTORS + k);
  return slots
    .filter((slot) => offset[slot] !== 0)
    .map((slot) => {
      const [dx, dy] = offsetOf(offset[slot]!);
      return { at: place[slot]!, offset: offset[slot]!, px: Math.sqrt(dx * dx + dy * dy) };
    })
    .sort((a, b) => a.px - b.px || a.at - b.at);
}

function reportOf(
  faults: readonly PlateFaults[],
  { plates, ppi }: PlatesValue,
  { ids }: RegionsValue,
  reach: number,
): SlackReport {
  const width = plates[0]!.coverage.width;
  const borders = faults.flatMap((found, plate) => bordersOf(found, plates[plate]!.id, ids, width, ppi));
  const least = (plate: string, shows: SlackBorder['shows']): SlackLeast | null => {
    const ways = borders.flatMap((border) =>
      border.plate === plate && border.shows === shows ? border.ways : [],
    );
    if (ways.length === 0) return null;
    const { slackMm, placeMm } = ways.reduce((so, way) => (way.slackMm < so.slackMm ? way : so));
    return { slackMm, placeMm };
  };
  return {
    version: 1,
    reachMm: mm3(pxToMm(reach, ppi)),
    pixelMm: pxToMm(1, ppi),
    plates: plates.map(({ id }) => ({ id, paper: least(id, 'paper'), overprint: least(id, 'overprint') })),
    borders,
  };
}

/** The faults of one plate by border; several groups of one border come together. */
function bordersOf(
  { points: { groups }, shown }: PlateFaults,
  plate: string,
  ids: readonly string[],
  width: number,
  ppi: number,
): SlackBorder[] {
  const borders = new Map<string, SlackBorder>();
  shown.forEach((fault, group) => {
    const labels = [groups.here[group]!, groups.there[group]!]
      .filter((label) => label !== 0)
      .sort((a, b) => a - b);
    if (!fault || labels.length === 0) return;
    const between: SlackBorder['between'] = [ids[labels[0]! - 1] ?? '', ids[labels.at(-1)! - 1] ?? ''];
    const alike = labels[0] === labels.at(-1);
    const against = !alike ? 'fill' : groups.onLine[group] === 0 ? 'mark' : 'line';
    const shows = fault.paper ? 'paper' : 'overprint';
    const { lab, distance } = fault;
    const hex = screenOf(lab).hex;
    const key = `${labels} ${against} ${shows}`;
    const border = borders.get(key) ?? {
      plate,
      between,
      against,
      shows,
      lab,
      hex,
      distance: mm3(distance),
      ways: [],
    };
    borders.set(key, { ...border, ways: [...border.ways, ...waysOf(groups, group).map(told)] });
  });
  return [...borders.values()].map((border) => ({ ...border, ways: leastWays(border.ways) }));

  function told({ at, offset, px }: { at: number; offset: number; px: number }): SlackWay {
    const [dx, dy] = offsetOf(offset);
    const placeMm: SlackWay['placeMm'] = [
      mm3(pxToMm((at % width) + 0.5, ppi)),
      mm3(pxToMm(Math.floor(at / width) + 0.5, ppi)),
    ];
    return { normal: [dx / px, dy / px], slackMm: mm3(pxToMm(px - 1, ppi)), placeMm };
  }
}

/** Of ways that go the same way, to a sixteenth of a turn, the one with the least slack. */
function leastWays(ways: readonly SlackWay[]): SlackWay[] {
  const kept: SlackWay[] = [];
  for (const way of [...ways].sort((a, b) => a.slackMm - b.slackMm))
    if (!kept.some(({ normal: [x, y] }) => Math.abs(x * way.normal[0] + y * way.normal[1]) > ABOUT_ALIKE))
      kept.push(way);
  return kept;
}

/** Cosine of a sixteenth of a turn. */
const ABOUT_ALIKE = Math.sqrt((1 + Math.SQRT1_2) / 2);
