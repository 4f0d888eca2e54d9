import { BadInput } from '../../src/graph/complaint.ts';
import { area as kind } from '../../src/nodes/area.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { Point } from '../kernels/path.ts';
import { mmToPx, type Plane } from '../kernels/plane.ts';
import { columnDistances } from './column-distances.ts';

export const area = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { drawing, regions } = inputs;
  const on = drawing ?? regions;
  if (!on)
    throw new BadInput('Area has neither a drawing nor regions wired to it; wire one, so that it has a size');
  const { ppi, mm } = on;
  const { width, height } = drawing?.line ?? regions!.labels;
  const px = (path: readonly (readonly [number, number])[]): Point[] =>
    path.map(([x, y]) => [mmToPx(x, ppi), mmToPx(y, ppi)]);
  const chosen = new Set(settings.regions);
  if (chosen.size > 0 && !regions)
    tools.complain({
      code: 'area-without-regions',
      severity: 'warning',
      message: 'Area names regions but no regions are wired to it; those are left out.',
    });
  const mask = tools.plane(width, height);
  await tools.bands(
    'areaMask',
    {
      out: mask,
      shapes: settings.shapes.map(({ pathMm }) => px(pathMm)),
      regions: regions
        ? {
            labels: regions.labels,
            members: Uint8Array.from([0, ...regions.ids.map((id) => (chosen.has(id) ? 1 : 0))]),
          }
        : null,
      line: drawing
        ? {
            plane: drawing.line,
            near: settings.lines.map(({ pathMm, withinMm }) => ({
              path: px(pathMm),
              radius: mmToPx(withinMm, ppi),
            })),
          }
        : null,
    },
    height,
  );
  const grow = mmToPx(settings.growMm, ppi);
  const feather = mmToPx(settings.featherMm, ppi);
  const soft = await softened(mask, { grow, feather, invert: settings.invert }, tools);
  return { area: { type: 'area', mask: soft, ppi, mm } };
});

interface Edge {
  /** px outward. */
  grow: number;
  /** Width of the fading edge, px. */
  feather: number;
  invert: boolean;
}

/** The mask grown, its edge fading over `feather` px on both sides of the grown outline. */
async function softened(mask: Plane, { grow, feather, invert }: Edge, tools: Tools): Promise<Plane> {
  const { width, height } = mask;
  const reach = Math.ceil(Math.abs(grow) + feather / 2) + 2;
  /** What a pixel counts whose middle lies `d` px inside the outline, below 0 outside. */
  const valueAt = (d: number) =>
    Math.round(255 * Math.min(1, Math.max(0, 0.5 + (d + grow) / Math.max(1, feather))));
  const byDistance = async (sites: { lowest: number; highest: number }, sign: 1 | -1) => {
    const columns = await columnDistances(mask, { ...sites, limit: reach, framed: false }, tools);
    const table = Uint8Array.from({ length: reach * reach + 1 }, (_, d2) =>
      valueAt(sign * (Math.sqrt(d2) - 0.5)),
    );
    const out = tools.plane(width, height);
    const beyond = sign > 0 ? 255 : 0;
    await tools.bands('depth', { columns, width, table, beyond, out: out.data }, height);
    tools.free(columns);
    return out;
  };
  const inside = await byDistance({ lowest: 0, highest: 0 }, 1);
  const outside = await byDistance({ lowest: 1, highest: 255 }, -1);
  const out = tools.plane(width, height);
  const planes = { mask: mask.data, inside: inside.data, outside: outside.data, out: out.data };
  await tools.bands('chooseBy', { width, ...planes, invert }, height);
  for (const scratch of [mask, inside, outside]) tools.free(scratch.data);
  return out;
}
