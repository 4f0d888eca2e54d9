import { nodeKinds } from '../nodes/registry.ts';
import { withSetting } from '../store/edits.ts';
import { edit, jobStore } from '../store/job-store.ts';
import { setView } from '../store/view-store.ts';
import { strings } from './strings.ts';

/** What a form needs to know to change one setting. */
export interface Change {
  /** Id of the node. */
  node: string;
  /** Name of the setting. */
  name: string;
  /** The setting as the person knows it, for the undo list. */
  title: string;
}

/**
 * Sets one setting as one undo step. Undefined sets it back to its default.
 *
 * @param shown the new value in words, for the undo list
 * @param gesture key of the drag or of the run of key presses it belongs to
 * @returns null, or why the value cannot be, as a sentence; the document is then as it was
 */
export function apply(
  { node, name, title }: Change,
  value: unknown,
  shown: string,
  gesture: string | null = null,
): string | null {
  const kind = kindOf(node);
  if (!kind) return null;
  if (value === undefined) {
    edit(strings.resetStep(kind.title, title), (job) => withSetting(job, node, name, undefined), gesture);
    return null;
  }
  const settings = jobStore.getState().job!.graph.nodes.find(({ id }) => id === node)!.settings;
  if (!kind.settings.safeParse({ ...settings, [name]: value }).success) return strings.notThis(title);
  edit(strings.step(kind.title, title, shown), (job) => withSetting(job, node, name, value), gesture);
  return null;
}

function kindOf(id: string) {
  const node = jobStore.getState().job?.graph.nodes.find((each) => each.id === id);
  return node && nodeKinds.get(node.kind);
}

let gestures = 0;

/** A key that no other gesture has. */
export function newGesture(): string {
  gestures++;
  return `docket-${gestures}`;
}

/** Tells the previews that the hand moves, until the pointer or key is let go wherever that happens. */
export function handMovesUntil(release: 'pointerup' | 'keyup'): void {
  setView({ handMoves: true });
  const ends = [release, 'pointercancel', 'blur'] as const;
  const rest = () => {
    setView({ handMoves: false });
    for (const end of ends) window.removeEventListener(end, rest);
  };
  for (const end of ends) window.addEventListener(end, rest);
}
