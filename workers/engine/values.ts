import type { Ink, Stock } from '../../src/graph/inks.ts';
import type { PortType } from '../../src/graph/ports.ts';
import type { Recipe } from '../../src/graph/recipe.ts';
import type { LabelPlane, Plane, SharedBytes } from '../kernels/plane.ts';

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
}

export interface Region {
  label: number;
  areaMm2: number;
  anchorMm: [number, number];
  boxMm: [number, number, number, number];
  touchesFrame: boolean;
  neighbours: { label: number; sharedMm: number }[];
}

/** An opening that was closed: where, how wide, and between which regions. */
export interface Wall {
  widthMm: number;
  placeMm: [number, number];
  between: [number, number];
}

export interface OpenGap {
  widthMm: number;
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
  /** 0..1 */
  takeUp: number;
  /** The stock on which the inks have their colours. */
  readOn: Stock;
}

export interface RecipesValue {
  type: 'recipes';
  /** In label order. */
  recipes: readonly Recipe[];
}

export interface PlateValue extends PlatePlace {
  coverage: Plane;
}

export interface PlatesValue extends Extent {
  type: 'plates';
  plates: readonly PlateValue[];
  /** 0..1 */
  takeUp: number;
  /** The stock on which the inks have their colours. */
  readOn: Stock;
}

export interface PaperValue {
  type: 'paper';
  stock: Stock;
  /** 0..1 */
  tooth: number;
  toothMm: number;
  /** 0..1 */
  fibres: number;
  seed: number;
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
}

export type Value =
  | DrawingValue
  | RegionsValue
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
    case 'plates':
      return value.plates.map((plate) => plate.coverage.data.buffer);
    case 'proof':
      return [value.pixels.buffer];
    case 'area':
      return [value.mask.data.buffer];
    default:
      return [];
  }
}
