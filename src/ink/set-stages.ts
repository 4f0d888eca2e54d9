import type { Ink } from '../graph/inks.ts';
import type { InkSetsInput } from './ink-sets.ts';

/** Up to this many sets are all tried: 3000 sets of three inks take some 10 s. */
const MOST_SETS = 3000;
/** How many sets of each size grow on where there are more. */
const BEAM = 6;
const MOST_COUNT = 6;

/** The sets that a search tries, in one stage or grown ink by ink. */
export interface SetStages {
  /** Whether the one stage tries every set. */
  everySet: boolean;
  count: number;
  /** How many sets all stages try together, at most. */
  atMost: number;
  /**
   * @param stage 0 for the first
   * @param best ids of the sets of the stage before, the best first
   */
  setsOf(stage: number, best: readonly (readonly string[])[]): Ink[][];
}

/** Throws a RangeError that says what to change when ink sets cannot be searched. */
export function checkSets({ shelf, wanted, count, keep = [], most }: InkSetsInput): void {
  if (wanted.length === 0) throw new RangeError('no colours are wanted; give at least one');
  if (!wanted.every(({ weight }) => weight > 0))
    throw new RangeError('the weight of a wanted colour is above 0');
  if (!(Number.isInteger(count) && count >= 1 && count <= MOST_COUNT))
    throw new RangeError(`a set has 1 to ${MOST_COUNT} inks, not ${count}`);
  if (!(most >= 1)) throw new RangeError(`ask for at least one set, not ${most}`);
  const ids = shelf.map(({ id }) => id);
  const double = ids.find((id, i) => ids.indexOf(id) !== i);
  if (double !== undefined)
    throw new RangeError(`two inks of the shelf are called ${double}; give one another id`);
  if (count > ids.length)
    throw new RangeError(`the shelf has ${ids.length} inks, too few for sets of ${count}; ask for fewer`);
  const stranger = keep.find((id) => !ids.includes(id));
  if (stranger !== undefined) throw new RangeError(`there is no ink ${stranger} on the shelf to keep`);
  if (new Set(keep).size > count)
    throw new RangeError(`${new Set(keep).size} inks are to be kept in a set of ${count}; keep fewer`);
}

/** How many ways there are to choose `size` of `count`. */
function choices(count: number, size: number): number {
  let ways = 1;
  for (let i = 1; i <= size; i++) ways = (ways * (count - size + i)) / i;
  return Math.round(ways);
}

function everyChoice<Item>(items: readonly Item[], size: number): Item[][] {
  if (size === 0) return [[]];
  return items.flatMap((item, i) => everyChoice(items.slice(i + 1), size - 1).map((rest) => [item, ...rest]));
}

/** The stages of a search for sets of `count` inks of a shelf with those to `keep` in. */
export function setStages(shelf: readonly Ink[], count: number, keep: readonly string[]): SetStages {
  const kept = shelf.filter(({ id }) => keep.includes(id));
  const free = shelf.filter(({ id }) => !keep.includes(id));
  const missing = count - kept.length;
  const all = choices(free.length, missing);
  if (all <= MOST_SETS) {
    const setsOf = () => everyChoice(free, missing).map((some) => [...kept, ...some]);
    return { everySet: true, count: 1, atMost: all, setsOf };
  }
  function setsOf(stage: number, best: readonly (readonly string[])[]): Ink[][] {
    const grow = stage === 0 ? [[]] : best.slice(0, BEAM);
    const grown = new Map<string, Ink[]>();
    for (const ids of grow) {
      for (const ink of free) {
        if (ids.includes(ink.id)) continue;
        const set = [...kept, ...free.filter((other) => other === ink || ids.includes(other.id))];
        grown.set(set.map(({ id }) => id).join(' '), set);
      }
    }
    return [...grown.values()];
  }
  return { everySet: false, count: missing, atMost: free.length * (1 + BEAM * (missing - 1)), setsOf };
}
