import type { NodeKind } from '../graph/node-kind.ts';

/** Kinds whose title or help holds every word that was typed. */
export function searchKinds(kinds: readonly NodeKind[], typed: string): NodeKind[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return kinds.filter(({ title, help }) => {
    const text = `${title} ${help}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
}
