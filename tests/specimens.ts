import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadVips } from '../workers/files/vips.ts';
import type { Plane } from '../workers/kernels/plane.ts';
import { fillPaper, writeTitle } from '../workers/tasks/contact-cells.ts';
import { grained } from './unit/support/grained.ts';
import { drawnPlane } from './unit/support/pictures.ts';

/** Every pattern of Plate grain on a step wedge, in two inks over one another, at 300 ppi. */
const PATTERNS = ['mottle', 'cloud', 'speckle', 'fibre', 'stipple'] as const;
const LOOKS = [
  { name: '0.35 mm', sizeMm: 0.35, strengthPercent: 35, hardness: 15 },
  { name: '0.8 mm, strong', sizeMm: 0.8, strengthPercent: 80, hardness: 40 },
  {
    name: '1.2 mm, torn, dry edges',
    sizeMm: 1.2,
    strengthPercent: 60,
    hardness: 90,
    openSolidsPercent: 10,
    edgePercent: 40,
  },
] as const;
const STEPS = [5, 15, 30, 50, 70, 85, 95, 100];
const [STEP, HIGH, GAP, TITLE, PPI] = [84, 150, 34, 15, 300];
const WIDTH = STEPS.length * STEP;

/** Light that two plates let through: a warm red under a blue. */
const INKS = [
  [0.86, 0.36, 0.28],
  [0.2, 0.42, 0.62],
] as const;

/** The first plate over the upper two thirds, the second over the lower two. */
const wedge = (from: number, to: number) =>
  drawnPlane(WIDTH, HIGH, (x, y) => {
    const inside = y >= from * HIGH && y < to * HIGH && x % STEP < STEP - 6;
    return inside ? Math.round(STEPS[Math.floor(x / STEP)]! * 2.55) : 0;
  });

const sheet = {
  width: LOOKS.length * (WIDTH + GAP) + GAP,
  height: PATTERNS.length * (HIGH + TITLE + GAP) + GAP,
};
const data = new Uint8Array(sheet.width * sheet.height * 3);
fillPaper(sheet, data);
for (const [row, pattern] of PATTERNS.entries())
  for (const [column, { name, ...look }] of LOOKS.entries()) {
    const plates = await grained([wedge(0, 2 / 3), wedge(1 / 3, 1)], PPI, { pattern, ...look });
    const left = GAP + column * (WIDTH + GAP);
    const top = GAP + row * (HIGH + TITLE + GAP);
    lay(plates, left, top);
    writeTitle(`${pattern} ${name}`, left, top + HIGH + 10, TITLE, sheet, data);
  }

function lay(plates: readonly Plane[], left: number, top: number): void {
  for (let y = 0; y < HIGH; y++)
    for (let x = 0; x < WIDTH; x++)
      for (let c = 0; c < 3; c++) {
        const at = ((top + y) * sheet.width + left + x) * 3 + c;
        for (const [k, plate] of plates.entries())
          data[at] = data[at]! * (1 - (plate.data[y * WIDTH + x]! / 255) * (1 - INKS[k]![c]!));
      }
}

const vips = await loadVips();
const image = vips.Image.newFromMemory(data, sheet.width, sheet.height, 3, vips.BandFormat.uchar);
const file = fileURLToPath(new URL('../graphs-demo/pictures/specimens.jpg', import.meta.url));
writeFileSync(file, image.writeToBuffer('.jpg', { Q: 86 }));
console.log(file);
process.exit(0);
