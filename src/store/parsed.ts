import type { z } from 'zod';
import type { GraphNode } from '../graph/job.ts';
import type { NodeKind, SettingsOf } from '../graph/node-kind.ts';

const known = new WeakMap<object, unknown>();

/** A node's settings with the usual ones filled in; read once for each state of the node. */
export function settingsOf<Kind extends NodeKind>(kind: Kind, node: GraphNode): SettingsOf<Kind> {
  const read = known.get(node.settings) ?? (kind.settings as z.ZodType).parse(node.settings);
  known.set(node.settings, read);
  return read as SettingsOf<Kind>;
}

/** An id of a letter and the number after the greatest in the list. */
export function nextId(letter: string, taken: readonly { id: string }[]): string {
  const numbers = taken.map(({ id }) => (id.startsWith(letter) ? Number(id.slice(letter.length)) : 0));
  return `${letter}${Math.max(0, ...numbers.filter(Number.isInteger)) + 1}`;
}
