import type { LabelPlane, Plane } from '../../../workers/kernels/plane.ts';
import type { TrapRules } from '../../../workers/kernels/trap.ts';

/** Trapping by looking, for every pixel and every rule, at all pixels within reach. */
export function slowTrap(labels: LabelPlane, plates: readonly Plane[], rules: TrapRules): Uint8Array[] {
  const { width, height, data } = labels;
  const outs = plates.map((plate) => new Uint8Array(plate.data));
  const at = (x: number, y: number) =>
    x < 0 || y < 0 || x >= width || y >= height ? -1 : data[y * width + x]!;
  for (const holdsBack of [1, 0])
    for (let source = 1; source < rules.starts.length - 1; source++)
      for (let k = rules.starts[source]!; k < rules.starts[source + 1]!; k++) {
        if (rules.holdsBack[k] !== holdsBack) continue;
        const target = rules.targets[k]!;
        const edge = [...data.keys()].filter((i) => {
          const [x, y] = [i % width, Math.floor(i / width)];
          const around = [-1, 0, 1].flatMap((dy) => [-1, 0, 1].map((dx) => at(x + dx, y + dy)));
          return data[i] === source && around.includes(target);
        });
        for (const i of edge)
          for (let j = 0; j < data.length; j++) {
            const dx = (i % width) - (j % width);
            const dy = Math.floor(i / width) - Math.floor(j / width);
            if (data[j] !== target || dx * dx + dy * dy > rules.radius[k]! ** 2) continue;
            plates.forEach((plate, p) => {
              if (((rules.plates[k]! >> p) & 1) === 0) return;
              const out = outs[p]!;
              const value = plate.data[i]!;
              out[j] = holdsBack ? Math.min(out[j]!, value) : Math.max(out[j]!, value);
            });
          }
      }
  return outs;
}
