import { BadInput } from '../../src/graph/complaint.ts';
import type { SettingsOf } from '../../src/graph/node-kind.ts';
import { resolveInkLab } from '../../src/ink/ink-lab.ts';
import { dotForTint } from '../../src/ink/tone-off.ts';
import { halftone as kind } from '../../src/nodes/halftone.ts';
import { paperStock } from '../../src/nodes/paper-stock.ts';
import { type PlateScreen, usualAngles } from '../../src/press/screens.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { PlatesValue, PlateValue } from '../engine/values.ts';
import { mmToPx, type Plane, pxToMm } from '../kernels/plane.ts';
import { cellThresholds, screenAxes } from '../kernels/screen/am.ts';

type Settings = SettingsOf<typeof kind>;

/** Most pixels of one plate on a device. */
const MOST_PIXELS = 400e6;
/** Dots of the tile of an FM screen, each way. */
const TILE = 256;
/** With fewer pixels across a cell than this its dots have hardly a shape. */
const LEAST_CELL_PX = 4;
/** A grain this hard has edges of its own. */
const HARD_GRAIN = 60;
/** So few pixels between paper and solid, by those of ink, and runs of ink this short: a plate of dots. */
const MOST_BETWEEN = 0.02;
const DOT_RUN_MM = 0.5;

export const halftone = evaluation(kind, async ({ settings, inputs, scale, tools }) => {
  const { plates } = inputs;
  const angles = usualAngles(plates.plates.map(({ ink }) => resolveInkLab(ink)[0]));
  await warn(settings, plates, scale, tools);
  const tones = plates.plates.map((plate) => toneOf(settings, plate, plates.printing.reference));
  const times = settings.how === 'screened' && scale === 1 ? timesOf(settings, plates, tools) : 1;
  const ppi = plates.ppi * times;
  const dotPx = Math.max(1, Math.round(mmToPx(settings.dotMm, ppi)));
  const dotMm = settings.how === 'screened' && scale === 1 ? pxToMm(dotPx, ppi) : settings.dotMm;
  const screened: PlateValue[] = [];
  for (const [i, plate] of plates.plates.entries()) {
    const screen = screenOf({ ...settings, dotMm }, plate, angles[i]!);
    const coverage =
      settings.how === 'screened' && scale === 1
        ? await dots(plate, tones[i]!, { settings, screen, times, ppi, dotPx }, tools)
        : await tinted(plate.coverage, tones[i]!, settings, tools);
    screened.push({ ...plate, coverage, screen });
  }
  return { plates: { ...plates, ppi, plates: screened } };
});

function screenOf(settings: Settings, plate: PlateValue, angle: number): PlateScreen {
  const { how, screen, lpi, dot, dotMm } = settings;
  const toneApplied = settings.tone === 'compensated' || plate.screen?.toneApplied === true;
  if (screen === 'fm') return { how, kind: 'fm', dotMm, toneApplied };
  return { how, kind: 'am', lpi, angleDeg: settings.angleDegOf[plate.id] ?? angle, dot, toneApplied };
}

/** Share of ink, 0..65535, by coverage. */
function toneOf(
  { tone }: Settings,
  plate: PlateValue,
  reference: PlatesValue['printing']['reference'],
): Uint16Array {
  const { lab, surface } = paperStock.settings.parse({});
  const applies = tone === 'compensated' && plate.screen?.toneApplied !== true;
  const dot = applies ? dotForTint(plate.ink, reference ?? { lab, surface }) : (tint: number) => tint;
  return Uint16Array.from({ length: 256 }, (_, coverage) => Math.round(65535 * dot(coverage / 255)));
}

/** Device pixels to a pixel of the drawing. */
function timesOf({ devicePpi }: Settings, { ppi, plates }: PlatesValue, tools: Tools): number {
  const wanted = devicePpi ?? ppi;
  const times = Math.max(1, Math.round(wanted / ppi));
  if (Math.abs(times * ppi - wanted) > 0.5)
    tools.complain({
      code: 'device-ppi-snapped',
      severity: 'note',
      message: `The plates are made at ${Math.round(times * ppi)} ppi, ${times} times the drawing, since ${Math.round(wanted)} ppi is no whole multiple of its ${Math.round(ppi)} ppi.`,
      measure: times * ppi,
    });
  const { width, height } = plates[0]!.coverage;
  if (width * height * times * times > MOST_PIXELS)
    throw new BadInput(
      `at ${Math.round(times * ppi)} ppi each plate has ${Math.round((width * height * times * times) / 1e6)} megapixels, more than ${MOST_PIXELS / 1e6}; set the device of Halftone to fewer ppi`,
    );
  return times;
}

/** A plate in a preview, or one whose dots the press makes: its tints, the tone curve taken off. */
async function tinted(from: Plane, tone: Uint16Array, { tone: how }: Settings, tools: Tools): Promise<Plane> {
  if (how === 'as-is') return from;
  const to = tools.plane(from.width, from.height);
  const table = Uint8Array.from(tone, (share) => Math.round((share * 255) / 65535));
  await tools.bands('toneTable', { from, to, table }, from.height);
  return to;
}

interface Device {
  settings: Settings;
  screen: PlateScreen;
  times: number;
  ppi: number;
  /** FM: side of a dot. */
  dotPx: number;
}

async function dots(plate: PlateValue, tone: Uint16Array, device: Device, tools: Tools): Promise<Plane> {
  const { settings, screen, times, ppi, dotPx } = device;
  const { width, height } = plate.coverage;
  const [wide, high] = [width * times, height * times];
  const hard = tools.plane(wide, high);
  await tools.bands('enlarge', { from: plate.coverage, out: hard, times }, high);
  const out = tools.plane(wide, high);
  if (screen.kind === 'am') {
    const axes = screenAxes(settings.lpi, screen.angleDeg!, ppi);
    const cell = cellThresholds(settings.dot);
    await tools.bands('screenAm', { plate: hard, out, tone, axes, cell }, high);
  } else {
    const tile = await tileOf(tools);
    const shift = [(plate.order * 97) % TILE, (plate.order * 59) % TILE] as const;
    await tools.bands('screenFm', { plate: hard, out, tone, tile, side: TILE, dot: dotPx, shift }, high);
  }
  tools.free(hard.data);
  return out;
}

/** It depends on nothing, so that one is enough for good. */
let tile: Promise<Uint16Array<SharedArrayBuffer>> | undefined;

function tileOf(tools: Tools): Promise<Uint16Array<SharedArrayBuffer>> {
  if (tile) return tile;
  const made = tools.whole('blueNoise', TILE);
  tile = made;
  made.catch(() => {
    tile = undefined;
  });
  return made;
}

async function warn(settings: Settings, plates: PlatesValue, scale: number, tools: Tools): Promise<void> {
  const already = plates.plates.filter(({ screen }) => screen?.how === 'screened');
  const hard = (plates.grainHardness ?? 0) >= HARD_GRAIN;
  const dotted = already.length > 0 || hard || scale > 1 ? already : await consistingOfDots(plates, tools);
  if (dotted.length > 0 || hard)
    tools.complain({
      code: 'screened-twice',
      severity: 'warning',
      message:
        dotted.length > 0
          ? `Plate ${dotted.map(({ id }) => id).join(', ')} consists of dots already; another screen on top of them beats with them. Bypass Halftone, or take the dots out before it.`
          : `The plate grain before Halftone is hard (${plates.grainHardness} %), and a screen on top of it beats with it. Make it softer, or bypass Halftone and print the grain as it is.`,
    });
  if (settings.tone === 'compensated')
    tools.complain({
      code: 'tone-curve-applied',
      severity: 'note',
      message:
        'The tone curves of the inks were taken off the tints here, in Halftone; do not apply them again when the plates are made.',
    });
  const across = plates.ppi === 0 ? 0 : (settings.devicePpi ?? plates.ppi * scale) / settings.lpi;
  if (settings.how === 'screened' && settings.screen === 'am' && across < LEAST_CELL_PX)
    tools.complain({
      code: 'screen-too-fine',
      severity: 'warning',
      message: `At ${settings.lpi} lpi a cell is only ${across.toFixed(1)} device pixels wide, so that its dots have no shape; choose a coarser ruling or a finer device.`,
      measure: settings.lpi,
    });
}

async function consistingOfDots({ plates, ppi }: PlatesValue, tools: Tools): Promise<PlateValue[]> {
  const found = await Promise.all(
    plates.map(({ coverage }) => tools.whole('dotsThere', { plate: coverage })),
  );
  return plates.filter((_, i) => {
    const { between, run } = found[i]!;
    return run > 0 && between < MOST_BETWEEN && run < mmToPx(DOT_RUN_MM, ppi);
  });
}
