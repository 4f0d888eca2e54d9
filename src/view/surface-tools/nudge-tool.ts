import type { Tool } from '../../app/registry.ts';
import type { GraphNode } from '../../graph/job.ts';
import { edit, jobStore, undo } from '../../store/job-store.ts';
import { offsetOf, registerNode, withNudge, withRegister } from '../../store/nudge.ts';
import { setView } from '../../store/view-store.ts';
import type { Point } from '../camera.ts';
import { deskStore } from '../desk-store.ts';
import type { Stroke } from '../hand.ts';
import { type NamedPlate, platesOf } from '../plates-of.ts';
import { say } from '../said-store.ts';
import { arrowMove } from './choose-thing.ts';
import { surfaceTexts } from './strings.ts';
import { newDrag, surfaceStore } from './surface-store.ts';

const { nudge: texts, tools } = surfaceTexts;

/** The plate to nudge: the chosen one, else the last. */
export function plateAtHand(plates: readonly NamedPlate[], chosen: string | null): NamedPlate | undefined {
  return plates.find(({ id }) => id === chosen) ?? plates.at(-1);
}

function readyRegister(): GraphNode | null {
  const { job } = jobStore.getState();
  if (!job) return null;
  const there = registerNode(job);
  if (there) return there;
  const put = withRegister(job.graph);
  if (!put) {
    say(texts.noProof);
    return null;
  }
  edit(texts.putIn, (before) => ({ ...before, graph: put.graph }));
  setView({ node: put.node });
  return put.graph.nodes.find(({ id }) => id === put.node)!;
}

interface Held {
  node: GraphNode;
  plate: NamedPlate;
}

function take(): Held | null {
  const { job } = jobStore.getState();
  const plate = job && plateAtHand(platesOf(job), surfaceStore.getState().plate);
  if (!plate) {
    say(texts.noPlate);
    return null;
  }
  const node = readyRegister();
  return node && { node, plate };
}

/** Says where a plate stands. */
function tell({ node, plate }: Held): void {
  const now = jobStore.getState().job?.graph.nodes.find(({ id }) => id === node.id);
  if (!now) return;
  const { alongMm, acrossMm } = offsetOf(now, plate.id);
  say(`${plate.ink}: ${texts.readout(alongMm, acrossMm)}`);
}

function dragging(): Stroke | null {
  const held = take();
  if (!held) return null;
  const { node, plate } = held;
  const from = offsetOf(node, plate.id);
  const gesture = newDrag();
  const { pxPerMm } = deskStore.getState().camera;
  let move: Point = { x: 0, y: 0 };
  return {
    to: (before, to) => {
      move = { x: move.x + (to.x - before.x) / pxPerMm, y: move.y + (to.y - before.y) / pxPerMm };
      const by = [move.x, move.y] as const;
      edit(texts.step(plate.ink), (job) => withNudge(job, node.id, plate.id, from, by), gesture);
    },
    end: () => tell(held),
    drop: () => {
      if (jobStore.getState().past.at(-1)?.gesture === gesture) undo();
    },
  };
}

function step(by: Point): void {
  const held = take();
  if (!held) return;
  const { node, plate } = held;
  const from = offsetOf(node, plate.id);
  edit(
    texts.step(plate.ink),
    (job) => withNudge(job, node.id, plate.id, from, [by.x, by.y]),
    `arrows nudge ${plate.id}`,
  );
  tell(held);
}

/** Puts a plate back where it is not set off. */
export function backIntoRegister(plate: NamedPlate): void {
  const { job } = jobStore.getState();
  const node = job && registerNode(job);
  if (!node) return;
  const none = { alongMm: 0, acrossMm: 0 };
  edit(texts.backStep(plate.ink), (before) => withNudge(before, node.id, plate.id, none, [0, 0]));
  tell({ node, plate });
}

/** Shifts a plate in the proof. */
export const nudgeTool: Tool = {
  id: 'nudge',
  ...tools.nudge,
  key: 'n',
  set: 'nudge',
  walks: 'regions',
  tap: () => {
    const { job } = jobStore.getState();
    const plate = job && plateAtHand(platesOf(job), surfaceStore.getState().plate);
    const node = job && registerNode(job);
    if (plate && node) tell({ node, plate });
  },
  stroke: dragging,
  press: (key, far) => {
    const by = arrowMove(key, far);
    if (by) step(by);
    return by !== null;
  },
  taken: () => {
    const { job } = jobStore.getState();
    const node = job && registerNode(job);
    if (node) setView({ node: node.id });
  },
};
