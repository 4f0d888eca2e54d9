import type { Ink, Lab, Stock } from '../../src/graph/inks.ts';
import type { PortType } from '../../src/graph/ports.ts';
import type { Fade, Recipe } from '../../src/graph/recipe.ts';
import type { Printing } from '../../src/ink/model-input.ts';
import type { PlateScreen } from '../../src/press/screens.ts';
import type { SheetSettings } from '../../src/press/sheet.ts';
import type { TrapDecision } from '../../src/press/trap-rule.ts';
import type { RoomFacts } from '../kernels/join-rooms.ts';
import type { RegionMeasures } from '../kernels/measure-regions.ts';
import type { Openings } from '../kernels/openings.ts';
import type { PaperLook } from '../kernels/paper-texture.ts';
import type { LabelPlane, Plane, SharedBytes } from '../kernels/plane.ts';
import type { Solids } from '../kernels/solids.ts';
import type { Walls } from '../kernels/walls.ts';
import type { Cleaning } from './cleaning.ts';

/** What a picture measures, at the scale it stands at. */
export interface Extent {
  /** Pixels per inch of these planes. */
  ppi: number;
  /** Printed size of the whole drawing, mm. */
  mm: readonly [number, number];
}

export interface DrawingValue extends Extent {
  type: 'drawing';
  line: Plane;
  artAt: 'trim' | 'bleed';
  /** What was done to the line on its way here; absent as long as it stands as the file gave it. */
  cleaning?: Cleaning;
}

export interface Region {
  label: number;
  areaMm2: number;
  anchorMm: [number, number];
  boxMm: [number, number, number, number];
  touchesFrame: boolean;
  neighbours: { label: number; sharedMm: number }[];
  /** The region that wholly surrounds this one; null where none does. */
  inside: number | null;
}

/** An opening that was closed: where, how wide, and between which regions. */
export interface Wall {
  widthMm: number;
  /** The middle of the opening. */
  placeMm: [number, number];
  /** Where the wall meets the line on either side. */
  endsMm: [[number, number], [number, number]];
  between: [number, number];
  /** Taken down by hand: both sides are one region, or were joined another way. */
  opened: boolean;
}

export interface OpenGap {
  widthMm: number;
  /** What closing it would part off, about. */
  partsMm2: number;
  placeMm: [number, number];
}

export interface RegionsValue extends Extent {
  type: 'regions';
  labels: LabelPlane;
  /** In label order: `table[label - 1]`. */
  table: readonly Region[];
  /** The id of each row of the table; empty before regions are named. */
  ids: readonly string[];
  walls: readonly Wall[];
  openGaps: readonly OpenGap[];
}

/** What line and walls part, before small areas and hands join it: the lasting part of Closed regions. */
export interface BarrierValue {
  type: 'barrier';
  /** Rooms, grown under the line. */
  filled: LabelPlane;
  rooms: RoomFacts & RegionMeasures;
  walls: Walls;
  /** Necks up to the widest that is reported. */
  openings: Openings;
  solids: Solids;
}

export interface PlatePlace {
  id: string;
  ink: Ink;
  /** Place in print order, from 1. */
  order: number;
  pass: number;
}

export interface InksValue {
  type: 'inks';
  plates: readonly PlatePlace[];
  printing: Printing;
}

/** A region's colour in a rough, and what comes nearest to it. */
export interface RegionMatch {
  /** D50, absolute, as it would have to print. */
  wantedLab: Lab;
  /** Share 0..1 of each plate. */
  tints: readonly number[];
  /** Predicted. */
  lab: Lab;
  /** CIEDE2000 between the two. */
  distance: number;
  /** Whether the inks do not reach it. */
  outOfReach: boolean;
}

/** How a rough was laid on the drawing, in the settings that Match rough takes. */
export interface RoughLaid {
  scalePercent: number;
  shiftMm: [number, number];
  turnDeg: number;
}

export interface RecipesValue {
  type: 'recipes';
  /** In label order; null where nothing is said. */
  recipes: readonly (Recipe | null)[];
  /** Regions whose recipe runs into another: in label order, null where it does not. */
  fades?: readonly (Fade | null)[];
  /** Where they come from a rough: in label order, null where it is not painted. */
  matched?: readonly (RegionMatch | null)[];
  fit?: RoughLaid;
}

export interface PlateValue extends PlatePlace {
  coverage: Plane;
  /** Where it went through Halftone: the dots it has or is to get. */
  screen?: PlateScreen;
}

/** What was decided at the border of two regions. */
export interface TrapBorder extends TrapDecision {
  /** Labels of the two regions, `first` and `second`. */
  between: readonly [number, number];
  /** Length of the border, mm. */
  sharedMm: number;
  /** 0 where nothing is done. */
  widthMm: number;
  /** Tints of the two regions, shares 0..1 of every plate. */
  tints: readonly [readonly number[], readonly number[]];
}

export interface PlatesValue extends Extent {
  type: 'plates';
  plates: readonly PlateValue[];
  printing: Printing;
  /** Where these plates went through Trap: every border between regions. */
  traps?: readonly TrapBorder[];
  /** Where they went through Plate grain: its hardness, 0..100, the most of several. */
  grainHardness?: number;
}

export interface PaperValue {
  type: 'paper';
  stock: Stock;
  /** How the surface varies; sizes in mm, strengths 0..1. */
  look: PaperLook;
  /** Instead of all that: a scan without a seam, light around 128. */
  scan: { tile: Plane; ppi: number; strength: number } | null;
  /** How much ink thins where the sheet stands up, 0..1. */
  inkOnTooth: number;
  /** How far the torn edge runs, mm. */
  deckleMm: number;
  /** How strongly the back shows, 0..1, and what is on it; the print itself where there is no picture. */
  showThrough: { share: number; picture: BackPicture | null };
}

/** A picture of the back of a sheet, upright as one sees it when the sheet is turned over. */
export interface BackPicture {
  /** `width * height * bands` bytes: grey or RGB, with straight alpha last where bands is even. */
  data: SharedBytes;
  width: number;
  height: number;
  bands: number;
}

export interface ProofValue extends Extent {
  type: 'proof';
  width: number;
  height: number;
  /** RGB, sRGB, 3 bytes a pixel. */
  pixels: SharedBytes;
}

export interface AreaValue extends Extent {
  type: 'area';
  mask: Plane;
}

export interface SheetValue {
  type: 'sheet';
  settings: SheetSettings;
}

export type Value =
  | DrawingValue
  | RegionsValue
  | BarrierValue
  | InksValue
  | RecipesValue
  | PlatesValue
  | PaperValue
  | ProofValue
  | AreaValue
  | SheetValue;

/** The value a port of this type carries. */
export type ValueOf<Type extends PortType> = Extract<Value, { type: Type }>;

/** The shared buffers a value stands on. */
export function buffersOf(value: Value): SharedArrayBuffer[] {
  switch (value.type) {
    case 'drawing':
      return [value.line.data.buffer];
    case 'regions':
      return [value.labels.data.buffer];
    case 'barrier':
      return [value.filled.data.buffer];
    case 'plates':
      return value.plates.map((plate) => plate.coverage.data.buffer);
    case 'proof':
      return [value.pixels.buffer];
    case 'paper':
      return [value.scan?.tile.data.buffer, value.showThrough.picture?.data.buffer].filter(
        (buffer) => buffer !== undefined,
      );
    case 'area':
      return [value.mask.data.buffer];
    default:
      return [];
  }
}
