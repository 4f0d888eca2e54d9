import {
  entriesOf,
  fadesToKeep,
  movedEdits,
  placesOf,
  remembered,
  withPieces,
  withPlaces,
} from '../../src/graph/carry-over.ts';
import { BadInput, type Complaint } from '../../src/graph/complaint.ts';
import { followed } from '../../src/graph/follow.ts';
import type { GraphNode, Job } from '../../src/graph/job.ts';
import { type MatchedCase, matchRegions, sureMatches } from '../../src/graph/match-regions.ts';
import type { Carry, Case, Earlier } from '../../src/graph/redraw.ts';
import { assignIds, type RegisterEntry } from '../../src/graph/register.ts';
import type { DrawingValue, RegionsValue } from '../engine/values.ts';
import { MM_PER_INCH } from '../kernels/plane.ts';
import type { Alignment } from '../kernels/redraw/align.ts';
import { feeding, firstOf } from './job-ends.ts';
import { overlapsOf } from './redraw-overlaps.ts';
import { backwards, forwards } from './redraw-places.ts';
import { regionAt, shapesOf, sureMatchesOf } from './redraw-surroundings.ts';
import { mm3 } from './report-parts.ts';
import type { TaskContext } from './task.ts';

export interface RedrawInput {
  /** The job with its old drawing. */
  job: Job;
  /** Hash and file name of the new drawing, which the engine was given. */
  drawing: { hash: string; file: string };
  /** Printed size of the new drawing; as before, or as its file says, where left out. */
  widthMm?: number | undefined;
  ppi?: number | undefined;
}

export interface Redrawn {
  job: Job;
  carry: Carry;
}

/** Where less of the area than this finds its like, it is another picture. */
const LEAST_CARRIED = 0.25;

interface Side {
  line: DrawingValue;
  regions: RegionsValue;
}

/**
 * Puts another drawing in place of a job's own and carries everything over that hangs on places and regions. A
 * drawing that the job had before comes back with all its places as they were.
 *
 * @throws BadInput when the job has no drawing or the new one cannot be used
 */
export async function redraw(input: RedrawInput, context: TaskContext): Promise<Redrawn> {
  const { job } = input;
  const node = job.graph.nodes.find(({ kind }) => kind === 'line-drawing');
  if (!node) throw new BadInput('the job has no Line drawing node to give the drawing to');
  const before = await sideOf(job, context);
  try {
    const now = earlierOf(job, node, before.value.regions);
    const back = job.redraw?.earlier.find(({ drawing }) => drawing === input.drawing.hash);
    const plain = withDrawing(job, node, input, back);
    if (back) return await restored(plain, job, now, back, before.value, context);
    return await carried(plain, job, now, before.value, context);
  } finally {
    before.release();
  }
}

/** Line and named regions of a job. */
async function sideOf(job: Job, { engine, flag, onProgress }: TaskContext) {
  const node = firstOf(job, 'closed-regions');
  const drawing = feeding(job, node, 'drawing');
  if (!node || !drawing) throw new BadInput('the job has no Closed regions node with a drawing wired to it');
  const targets = [drawing, { node, port: 'regions' }];
  const run = await engine.evaluate({ job, targets, scale: 1 }, flag, onProgress);
  const [line, regions] = run.values as [DrawingValue, RegionsValue];
  return { value: { line, regions } satisfies Side, complaints: run.complaints, release: run.release };
}

function earlierOf(job: Job, node: GraphNode, regions: RegionsValue): Earlier {
  const { asset, widthMm = null, ppi = null } = node.settings;
  return {
    drawing: asset as string,
    size: { widthMm: widthMm as number | null, ppi: ppi as number | null },
    regions: entries(regions),
    places: placesOf(job.graph.nodes),
    ...fadesToKeep(job),
  };
}

function entries({ table, ids }: RegionsValue): RegisterEntry[] {
  return table.map(({ anchorMm, areaMm2, boxMm }, i) => ({ id: ids[i]!, anchorMm, areaMm2, boxMm }));
}

/** The job with the new drawing's file; sizes that were said, else those it had before, else as the old one. */
function withDrawing(job: Job, node: GraphNode, { drawing, widthMm, ppi }: RedrawInput, back?: Earlier): Job {
  const { ppi: _, widthMm: oldWidth, ...rest } = node.settings;
  const size = back
    ? { widthMm: back.size.widthMm, ppi: back.size.ppi }
    : { widthMm: widthMm ?? (ppi === undefined ? (oldWidth ?? null) : null), ppi: ppi ?? null };
  const nodes = job.graph.nodes.map((each) =>
    each === node ? { ...each, settings: { ...rest, ...size, asset: drawing.hash } } : each,
  );
  const assets = { ...job.assets, [drawing.hash]: { file: drawing.file } };
  return { ...job, graph: { ...job.graph, nodes }, assets };
}

/** The drawing comes back: its regions get the ids they had, and places stand where they stood. */
async function restored(
  plain: Job,
  job: Job,
  now: Earlier,
  back: Earlier,
  before: Side,
  context: TaskContext,
): Promise<Redrawn> {
  const register = { ...job.register, regions: back.regions };
  const placed = { ...withPlaces(plain, back), register };
  const after = await sideOf(placed, context);
  const found = entries(after.value.regions);
  after.release();
  const there = new Set(found.map(({ id }) => id));
  const olds = new Set(before.regions.ids);
  const cases: Case[] = [
    ...found.map(({ id }) =>
      olds.has(id)
        ? { new: id, old: id, state: 'kept' as const, confidence: 1 }
        : { new: id, state: 'new' as const, confidence: 1 },
    ),
    ...now.regions.flatMap(({ id }) =>
      there.has(id) ? [] : [{ old: id, state: 'gone' as const, confidence: 1 }],
    ),
  ];
  const transform = { scale: 1, shiftMm: [0, 0] as [number, number], turnDeg: 0 };
  const gone = now.regions.filter(({ id }) => !there.has(id));
  const next: Job = {
    ...placed,
    register: assignIds(found, register).register,
    redraw: {
      cases,
      transform,
      gone,
      earlier: remembered(job, now).filter(({ drawing }) => drawing !== back.drawing),
    },
  };
  return { job: next, carry: { regions: cases, transform, complaints: after.complaints } };
}

async function carried(
  plain: Job,
  job: Job,
  now: Earlier,
  before: Side,
  context: TaskContext,
): Promise<Redrawn> {
  const { tools, tidy } = context.engine.toolBox(context.flag);
  const bare = { ...plain, register: { ...job.register, regions: [] } };
  const unplaced = { ...bare, graph: { ...bare.graph, nodes: withoutPlaces(bare.graph.nodes) } };
  const rough = await sideOf(unplaced, context);
  try {
    if (rough.complaints.some(({ code }) => code === 'size-assumed'))
      return await carried(asWideAs(plain, before.line.mm[0]), job, now, before, context);
    const ratio = ratioOf(before.line, rough.value.line);
    const lines = { before: before.line.line, after: rough.value.line.line, ratio };
    const alignment = await tools.whole('alignLines', lines);
    const move = forwards(alignment, before.line, rough.value.line, ratio);
    const moved = { ...bare, graph: { ...bare.graph, nodes: movedEdits(plain.graph.nodes, move) } };
    const after = await sideOf(moved, context);
    try {
      return await matched({
        moved,
        job,
        now,
        before,
        after: after.value,
        alignment,
        ratio,
        move,
        tools,
        complaints: after.complaints,
      });
    } finally {
      after.release();
    }
  } finally {
    rough.release();
    tidy();
  }
}

/** The job with its drawing printed so wide, mm: a file that says no size prints as wide as the one before it. */
function asWideAs(job: Job, widthMm: number): Job {
  const nodes = job.graph.nodes.map((node) =>
    node.kind === 'line-drawing' ? { ...node, settings: { ...node.settings, widthMm } } : node,
  );
  return { ...job, graph: { ...job.graph, nodes } };
}

function withoutPlaces(nodes: readonly GraphNode[]): GraphNode[] {
  return nodes.map((node) => {
    if (node.kind !== 'closed-regions') return node;
    const { edits: _, ...settings } = node.settings;
    return { ...node, settings };
  });
}

/** Pixels of the new drawing to one of the old: by printed size where those are alike, else by width. */
function ratioOf(before: DrawingValue, after: DrawingValue): number {
  const alike = after.mm[0] / before.mm[0];
  if (alike > 0.85 && alike < 1.18) return after.ppi / before.ppi;
  return after.line.width / before.line.width;
}

interface Matching {
  moved: Job;
  job: Job;
  now: Earlier;
  before: Side;
  after: Side;
  alignment: Alignment;
  ratio: number;
  /** Where an old place lies by how the drawing as a whole moved, mm. */
  move: (place: readonly [number, number]) => [number, number];
  tools: ReturnType<TaskContext['engine']['toolBox']>['tools'];
  complaints: readonly Complaint[];
}

async function matched(args: Matching): Promise<Redrawn> {
  const { moved, job, now, before, after, alignment, ratio, move, tools, complaints } = args;
  const place = backwards(alignment, before.line.line, after.line.line, ratio);
  const sides = await overlapsOf(
    before.regions,
    after.regions,
    place,
    ratio * alignment.scale,
    tools,
    sureMatches,
  );
  const cases = matchRegions(sides);
  const total = sides.after.reduce((sum, { area }) => sum + area, 0);
  const found = cases.reduce(
    (sum, each) =>
      each.after !== null && each.before !== null && each.state !== 'new'
        ? sum + sides.after[each.after]!.area * each.confidence
        : sum,
    0,
  );
  const other = found < LEAST_CARRIED * total;
  const named = namesFor(other ? asOther(cases) : cases, before.regions, after.regions, job.register.next);
  const register = {
    ...job.register,
    next: named.next,
    regions: after.regions.table.map(({ anchorMm, areaMm2, boxMm }, i) => ({
      id: named.ids[i]!,
      anchorMm,
      areaMm2,
      boxMm,
    })),
  };
  const { scale, turn, x, y } = alignment;
  const mm = MM_PER_INCH / after.line.ppi;
  const transform = {
    scale: mm3((scale * ratio * before.line.ppi) / after.line.ppi),
    shiftMm: [mm3(x * mm), mm3(y * mm)] as [number, number],
    turnDeg: mm3(turn),
  };
  const olds = entriesOf(now.regions);
  const gone = named.cases.flatMap(({ state, old }) =>
    state === 'gone' && old ? (olds.get(old) ?? []) : [],
  );
  const shapes = await shapesOf(artOf(moved), tools);
  const placed = other
    ? { job: moved, left: [OTHER_PICTURE] }
    : followed(moved, {
        move,
        scale: transform.scale,
        turnDeg: turn,
        sizeMm: after.line.mm,
        matches: sureMatchesOf(before.regions, after.regions, named.cases, named.ids, {
          move,
          scale: transform.scale,
        }),
        cases: named.cases,
        regionAt: (at) => regionAt(before.regions, at),
        shapeOf: (asset) => shapes.get(asset) ?? null,
      });
  const left = other || placed.left.length === 0 ? {} : { left: placed.left };
  const next: Job = {
    ...withPieces({ ...placed.job, register }, named.pieces),
    redraw: { cases: named.cases, transform, gone, earlier: remembered(job, now), ...left },
  };
  const told = [...complaints, ...placed.left];
  return { job: next, carry: { regions: named.cases, transform, complaints: told } };
}

/** Pictures that lie on plates. */
function artOf({ graph }: Job): string[] {
  return graph.nodes.flatMap(({ kind, settings }) =>
    kind === 'plate-art' && typeof settings.asset === 'string' ? [settings.asset] : [],
  );
}

const OTHER_PICTURE: Complaint = {
  code: 'other-picture',
  severity: 'error',
  message:
    'The new drawing is another picture altogether: nothing was carried over. The recipes of the old regions are kept; put the old drawing back to have them again.',
};

/** Every new region new, every old one gone. */
function asOther(cases: readonly MatchedCase[]): MatchedCase[] {
  const once = (key: 'after' | 'before') =>
    [...new Set(cases.flatMap((each) => each[key] ?? []))].sort((a, b) => a - b);
  return [
    ...once('after').map((after) => ({ after, before: null, state: 'new' as const, confidence: 1 })),
    ...once('before').map((before) => ({ after: null, before, state: 'gone' as const, confidence: 1 })),
  ];
}

/** Ids for new regions, cases by id, and pieces that take what another region printed. */
function namesFor(
  cases: readonly MatchedCase[],
  before: RegionsValue,
  after: RegionsValue,
  first: number,
): { ids: string[]; cases: Case[]; pieces: { piece: string; of: string }[]; next: number } {
  const ids = new Array<string>(after.ids.length).fill('');
  const taken = new Set<number>();
  for (const { after: one, before: other, state } of cases) {
    if (one === null || other === null || ids[one] !== '' || taken.has(other) || state === 'new') continue;
    if (state === 'split' && !isMain(one, other)) continue;
    ids[one] = before.ids[other]!;
    taken.add(other);
  }
  const used = new Set(before.ids);
  let next = first;
  for (let i = 0; i < ids.length; i++) {
    if (ids[i] !== '') continue;
    while (used.has(`r${next}`)) next++;
    ids[i] = `r${next++}`;
  }
  const named = cases.map(({ after: one, before: other, state, confidence }) => ({
    ...(one === null ? {} : { new: ids[one]! }),
    ...(other === null ? {} : { old: before.ids[other]! }),
    state,
    confidence: mm3(Math.min(1, confidence)),
  }));
  const pieces = named.flatMap((each) => {
    const piece = each.state === 'split' || each.state === 'new';
    return piece && each.new && each.old && each.new !== each.old ? [{ piece: each.new, of: each.old }] : [];
  });
  return { ids, cases: named, pieces, next };

  /** Of the pieces of one region the one that the match chose: it is the surest. */
  function isMain(one: number, other: number): boolean {
    const pieces = cases.filter((each) => each.before === other && each.after !== null);
    const most = Math.max(...pieces.map(({ confidence }) => confidence));
    return pieces.find(({ confidence }) => confidence === most)!.after === one;
  }
}
