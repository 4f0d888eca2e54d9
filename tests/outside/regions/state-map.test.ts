import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { feature, mesh, neighbors } from 'topojson-client';
import type { GeometryCollection, Topology } from 'topojson-specification';
import { beforeAll, describe, expect, it } from 'vitest';
import type { RegionsValue } from '../../../workers/engine/values.ts';
import { localRegions } from '../../unit/support/local-regions.ts';
import { areaOf, drawLines, isWithin, type Point } from './draw-map.ts';

/**
 * The states of the USA as the npm package us-atlas 3.0.1 has them (states-albers-10m.json, ISC licence, made from the
 * US Census Bureau's cartographic boundary files, 2017), and which of them share a border by topojson-client.
 */
const FILE = createRequire(import.meta.url).resolve('us-atlas/states-albers-10m.json');
const atlas = JSON.parse(readFileSync(FILE, 'utf8')) as Topology<{
  states: GeometryCollection<{ name: string }>;
}>;
const { states } = atlas.objects;

const SCALE = 2.5;
const [left, top, right, bottom] = atlas.bbox!;
const [WIDTH, HEIGHT] = [right! - left! + 40, bottom! - top! + 40].map((extent) =>
  Math.ceil(extent * SCALE),
) as [number, number];
const toPixels = ([x, y]: readonly number[]): Point => [(x! - left! + 20) * SCALE, (y! - top! + 20) * SCALE];

interface State {
  name: string;
  polygons: Point[][][];
}

const shapes: State[] = feature(atlas, states).features.map(({ geometry, properties }) => {
  const polygons =
    geometry.type === 'Polygon'
      ? [geometry.coordinates]
      : geometry.type === 'MultiPolygon'
        ? geometry.coordinates
        : [];
  return {
    name: properties.name,
    polygons: polygons.map((rings) => rings.map((ring) => ring.map(toPixels))),
  };
});

const PPI = 254;
const MM2 = (25.4 / PPI) ** 2;
/** No island has an area near this, so that it does not matter that a line takes half a pixel of each: px2. */
const ISLAND = 1000;
const LARGE = 10_000;

let regions: RegionsValue;

beforeAll(async () => {
  const line = drawLines(
    WIDTH,
    HEIGHT,
    mesh(atlas, states).coordinates.map((path) => path.map(toPixels)),
  );
  const settings = { gapMm: 0, smallestMm2: 0, tuckMm: 1 };
  ({ regions } = await localRegions(line, PPI, settings));
});

const placeOf = (label: number): Point =>
  regions.table[label - 1]!.anchorMm.map((mm) => (mm * PPI) / 25.4) as unknown as Point;
const areaPx = (label: number) => regions.table[label - 1]!.areaMm2 / MM2;
const stateAt = (place: Point) =>
  shapes.find(({ polygons }) => polygons.some((rings) => isWithin(rings, place)))?.name ?? null;

describe('the map of the states, drawn in lines of one pixel', () => {
  it('has a region for each part of a state that is not tiny, and the sea', () => {
    const parts = shapes.flatMap(({ name, polygons }) =>
      polygons.filter(([ring]) => areaOf(ring!) > ISLAND).map(() => name),
    );
    const found = regions.table.filter(({ label }) => areaPx(label) > ISLAND);
    const names = found.map(({ label }) => stateAt(placeOf(label)));
    // what is no state is the sea, and a bay or two whose mouth is as narrow as the line
    const sea = found.filter((_, k) => names[k] === null);
    expect(sea.filter(({ touchesFrame }) => touchesFrame)).toHaveLength(1);
    expect(sea.length).toBeLessThanOrEqual(3);
    expect(names.filter((name) => name !== null).sort()).toEqual(parts.sort());
  });

  it('gives each part the area of its polygon but for half the line around it', () => {
    const rings = shapes.flatMap(({ polygons }) => polygons.filter((all) => areaOf(all[0]!) > LARGE));
    for (const polygon of rings) {
      const own = regions.table.filter(
        ({ label }) => areaPx(label) > ISLAND && isWithin(polygon, placeOf(label)),
      );
      expect(own).toHaveLength(1);
      const whole = polygon.reduce((sum, ring, k) => sum + (k === 0 ? 1 : -1) * areaOf(ring), 0);
      expect(areaPx(own[0]!.label)).toBeLessThan(whole);
      expect(areaPx(own[0]!.label)).toBeGreaterThan(0.9 * whole);
    }
  });

  it('has the neighbours that share a border; those that meet in a corner are none', () => {
    const isLarge = ({ polygons }: State) => polygons.some(([ring]) => areaOf(ring!) > LARGE);
    const large = shapes.filter(isLarge).map(({ name }) => name);
    expect(large.length).toBeGreaterThan(40);
    const nameOf = new Map(regions.table.map(({ label }) => [label, stateAt(placeOf(label))]));
    const meeting = new Set<string>();
    for (const { label, neighbours } of regions.table)
      for (const other of neighbours) {
        const pair = [nameOf.get(label), nameOf.get(other.label)];
        // in a corner where four meet, the pixels of the line fall to the nearest: a pixel or two on a side
        if (other.sharedMm > (4 * 25.4) / PPI) meeting.add(pair.join(' - '));
      }
    const wanted = neighbors(states.geometries).flatMap((others, i) =>
      others.map((j) => `${shapes[i]!.name} - ${shapes[j]!.name}`),
    );
    const between = (pairs: Iterable<string>) =>
      [...pairs].filter((pair) => {
        const [a, b] = pair.split(' - ');
        return a !== b && large.includes(a!) && large.includes(b!);
      });
    expect(between(meeting).sort()).toEqual([...new Set(between(wanted))].sort());
    expect(meeting).not.toContain('Arizona - Colorado');
    expect(meeting).not.toContain('Utah - New Mexico');
    expect(meeting).toContain('Arizona - Utah');
  });
});
