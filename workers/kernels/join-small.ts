import type { Borders } from './borders.ts';
import { rootOf, unionOf, unite } from './union.ts';

/**
 * Where areas below the smallest go. They first join one another across line (the cells of a hatching); a group
 * whose filled area reaches the smallest is a region, any other joins the neighbour it shares most border with.
 * A single small area counts by what lines close off, a group by what it fills.
 *
 * @param area free pixels by label, index 0 unused
 * @param filled pixels after growth by label
 * @param smallest px; 0 keeps everything
 * @returns new label by old label: 1..count in the order of old labels, 0 stays 0
 */
export function joinSmall(
  area: ArrayLike<number>,
  filled: ArrayLike<number>,
  borders: Borders,
  smallest: number,
): { table: Uint32Array; count: number } {
  const size = area.length;
  const home = unionOf(size);
  const small = (label: number) => area[label]! < smallest;
  for (let k = 0; k < borders.a.length; k++)
    if (small(borders.a[k]!) && small(borders.b[k]!)) unite(home, borders.a[k]!, borders.b[k]!);

  const members = new Uint32Array(size);
  const groupFill = new Float64Array(size);
  for (let label = 1; label < size; label++) {
    members[rootOf(home, label)]!++;
    groupFill[rootOf(home, label)]! += filled[label]!;
  }
  const stays = (root: number) => !small(root) || (members[root]! > 1 && groupFill[root]! >= smallest);

  const bestShare = new Float64Array(size);
  const bestHost = new Uint32Array(size);
  for (const [root, shares] of sharedBorders(home, borders, stays))
    for (const [host, length] of shares)
      if (length > bestShare[root]!) {
        bestShare[root] = length;
        bestHost[root] = host;
      }

  const table = new Uint32Array(size);
  let count = 0;
  for (let label = 1; label < size; label++) {
    const root = rootOf(home, label);
    if (root === label && (stays(root) || bestHost[root] === 0)) table[label] = ++count;
  }
  for (let label = 1; label < size; label++) {
    const root = rootOf(home, label);
    table[label] = table[stays(root) || bestHost[root] === 0 ? root : bestHost[root]!]!;
  }
  return { table, count };
}

/** Border lengths of every group that goes with each group that stays, hosts in rising order. */
function sharedBorders(home: Uint32Array, borders: Borders, stays: (root: number) => boolean) {
  const shares = new Map<number, Map<number, number>>();
  const add = (guest: number, host: number, length: number) => {
    const hosts = shares.get(guest) ?? new Map<number, number>();
    hosts.set(host, (hosts.get(host) ?? 0) + length);
    shares.set(guest, hosts);
  };
  for (let k = 0; k < borders.a.length; k++) {
    const a = rootOf(home, borders.a[k]!);
    const b = rootOf(home, borders.b[k]!);
    if (!stays(a) && stays(b)) add(a, b, borders.length[k]!);
    if (stays(a) && !stays(b)) add(b, a, borders.length[k]!);
  }
  return shares;
}
