import type { GraphNode, Job } from '../../src/graph/job.ts';
import { upstreamOf } from '../../src/graph/order.ts';
import { putBefore, upstreamOfKind } from '../../src/graph/put-in.ts';
import { inkSet } from '../../src/nodes/ink-set.ts';
import { pressFaults } from '../../src/nodes/press-faults.ts';
import { registerOffset } from '../../src/nodes/register-offset.ts';
import { mix } from '../kernels/lattice.ts';

/** One sheet of a run. */
export interface RunSheet {
  /** From 1. */
  sheet: number;
  /** Sheets in the run. */
  of: number;
  seed: number;
}

/** Share of the register tolerance that the press drifts by; the rest is jitter from sheet to sheet. */
const DRIFT = 0.5;
/** Ink film that is lost at most, %: by drift over the run, and from sheet to sheet. */
const FILM_DRIFT = 8;
const FILM_JITTER = 2;
/** Faults grow over a run from this share of what is set to that one. */
const FAULTS_FIRST = 0.6;
const FAULTS_LAST = 1.3;
/** The press swings back and forth about this often in a run. */
const SWINGS = 5;

/**
 * The job as one sheet of a run comes off the press. Register and ink drift slowly, faults grow, and all of them
 * jitter from sheet to sheet: another `seed`, another run. A job whose proof no press stands before gets one.
 */
export function sheetOfRun(job: Job, run: RunSheet): Job {
  const pressed = [registerOffset.kind, pressFaults.kind].reduce(withBeforeProof, job);
  const proof = pressed.graph.nodes.find(({ kind }) => kind === 'proof');
  if (!proof) return pressed;
  const upstream = upstreamOf(pressed.graph, proof.id);
  const plates = plateIds(pressed);
  const nodes = pressed.graph.nodes.map((node) => {
    if (!upstream.has(node.id)) return node;
    if (node.kind === registerOffset.kind)
      return { ...node, bypassed: false, settings: registerAt(node, plates, run) };
    if (node.kind === pressFaults.kind)
      return { ...node, bypassed: false, settings: faultsAt(node, plates, run) };
    return node;
  });
  return { ...pressed, graph: { ...pressed.graph, nodes } };
}

/** The job with a node of this kind between its proof and the plates, unless one stands before it already. */
function withBeforeProof(job: Job, kind: string): Job {
  const { graph } = job;
  const proof = graph.nodes.find((node) => node.kind === 'proof');
  if (!proof || upstreamOfKind(graph, proof.id, kind)) return job;
  const put = putBefore(graph, kind, proof.id);
  return put ? { ...job, graph: put.graph } : job;
}

function plateIds(job: Job): string[] {
  const node = job.graph.nodes.find(({ kind }) => kind === inkSet.kind);
  const set = inkSet.settings.safeParse(node?.settings ?? {});
  return set.success ? set.data.plates.map(({ id }) => id) : [];
}

/** The first plate is what the others are registered to, so that it stays. */
function registerAt(node: GraphNode, plates: readonly string[], run: RunSheet): GraphNode['settings'] {
  const settings = registerOffset.settings.parse(node.settings);
  const still = { alongMm: 0, acrossMm: 0, rotationDeg: 0, stretchMm: 0 };
  const moved = plates.slice(1).map((id, k) => {
    const fixed = (settings.how === 'by-chance' ? undefined : settings.offsets[id]) ?? still;
    const drift = (n: number, tolerance: number) => DRIFT * tolerance * swing(k * 3 + n, run);
    const offset = {
      ...fixed,
      alongMm: within(20, fixed.alongMm + drift(0, settings.toleranceAlongMm)),
      acrossMm: within(20, fixed.acrossMm + drift(1, settings.toleranceAcrossMm)),
      rotationDeg: within(5, fixed.rotationDeg + drift(2, settings.toleranceDeg)),
    };
    return [id, offset] as const;
  });
  return {
    ...settings,
    how: 'both',
    offsets: { ...settings.offsets, ...Object.fromEntries(moved) },
    toleranceAlongMm: settings.toleranceAlongMm * (1 - DRIFT),
    toleranceAcrossMm: settings.toleranceAcrossMm * (1 - DRIFT),
    toleranceDeg: settings.toleranceDeg * (1 - DRIFT),
    sheet: run.sheet,
    seed: mix(settings.seed, run.seed),
  };
}

function faultsAt(node: GraphNode, plates: readonly string[], run: RunSheet): GraphNode['settings'] {
  const settings = pressFaults.settings.parse(node.settings);
  const through = run.of === 1 ? 0 : (run.sheet - 1) / (run.of - 1);
  const grown = FAULTS_FIRST + (FAULTS_LAST - FAULTS_FIRST) * through;
  const films = plates.map((id, k) => {
    const set = settings.densityPercentOf[id] ?? settings.densityPercent;
    const lost =
      FILM_DRIFT * (0.5 + 0.5 * swing(200 + k, run)) +
      FILM_JITTER * chance(mix(300 + k, run.seed), run.sheet);
    return [id, Math.max(50, set - lost)] as const;
  });
  return {
    ...settings,
    amountPercent: Math.min(100, settings.amountPercent * grown),
    densityPercentOf: { ...settings.densityPercentOf, ...Object.fromEntries(films) },
    sheet: run.sheet,
    seed: mix(settings.seed, run.seed),
  };
}

const within = (most: number, value: number) => Math.min(most, Math.max(-most, value));
const chance = (seed: number, n: number) => mix(n, seed) / 0x100000000;

/** A slow swing -1..1 over the run, its own for each `n`. */
function swing(n: number, { sheet, of, seed }: RunSheet): number {
  const own = mix(n, seed);
  const at = ((sheet - 1) * SWINGS) / Math.max(SWINGS, of);
  const knot = Math.floor(at);
  const part = at - knot;
  const from = chance(own, knot) * 2 - 1;
  const to = chance(own, knot + 1) * 2 - 1;
  return from + (to - from) * part * part * (3 - 2 * part);
}
