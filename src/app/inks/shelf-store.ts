import { createStore } from 'zustand/vanilla';
import { type Ink, type Shelf, shelfSchema } from '../../graph/inks.ts';
import { DEMO_SHELF } from '../../ink/demo-inks.ts';
import { withVault } from '../files/vault.ts';

/** The inks the person owns, whatever job is open. */
export interface ShelfState {
  /** Null until it was read. */
  shelf: Shelf | null;
  /** The shelf before each change, the latest last. */
  past: readonly Shelf[];
  /** Why the browser does not keep it; null while it does. */
  trouble: string | null;
}

const KEY = 'shelf';
const MOST_STEPS = 50;

export const shelfStore = createStore<ShelfState>(() => ({ shelf: null, past: [], trouble: null }));

/** Reads the shelf this browser keeps; the generic inks stand on it until there is one. */
export async function readShelf(): Promise<void> {
  if (shelfStore.getState().shelf) return;
  try {
    const text = await withVault((vault) => vault.get('state', KEY));
    shelfStore.setState({ shelf: text === undefined ? DEMO_SHELF : shelfSchema.parse(JSON.parse(text)) });
  } catch (error) {
    shelfStore.setState({ shelf: DEMO_SHELF, trouble: (error as Error).message });
  }
}

/** Changes the shelf; what stood there before can be brought back. */
export function changeShelf(change: (shelf: Shelf) => Shelf): void {
  const { shelf, past } = shelfStore.getState();
  if (!shelf) return;
  const next = change(shelf);
  if (next === shelf) return;
  shelfStore.setState({ shelf: next, past: [...past, shelf].slice(-MOST_STEPS) });
  void keep(next);
}

/** Brings the shelf back as it was before the last change. */
export function undoShelf(): void {
  const { past } = shelfStore.getState();
  const before = past.at(-1);
  if (!before) return;
  shelfStore.setState({ shelf: before, past: past.slice(0, -1) });
  void keep(before);
}

async function keep(shelf: Shelf): Promise<void> {
  try {
    await withVault((vault) => vault.put('state', JSON.stringify(shelf), KEY));
    shelfStore.setState({ trouble: null });
  } catch (error) {
    shelfStore.setState({ trouble: (error as Error).message });
  }
}

/** The shelf with inks added; one whose id is taken gets another. Inks alike in name and colour come once. */
export function withInks(
  shelf: Shelf,
  inks: readonly Ink[],
  freshId: (stem: string, taken: readonly Ink[]) => string,
): Shelf {
  const alike = (one: Ink, other: Ink) =>
    one.name === other.name && JSON.stringify(one.lab ?? one.hex) === JSON.stringify(other.lab ?? other.hex);
  const all = [...shelf.inks];
  for (const ink of inks)
    if (!all.some((other) => alike(ink, other))) all.push({ ...ink, id: freshId(ink.id, all) });
  return all.length === shelf.inks.length ? shelf : { ...shelf, inks: all };
}
