import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { printModel } from '../../../src/ink/model.ts';
import { proofTable } from '../../../src/ink/proof-table.ts';
import { components } from '../../../workers/kernels/components.ts';
import { levelShares, tileField } from '../../../workers/kernels/grain-field.ts';
import { gatherTable } from '../../../workers/kernels/grain-table.ts';
import { grainTile } from '../../../workers/kernels/grain-tile.ts';
import { bandKernels } from '../../../workers/kernels/index.ts';
import { latticeOf, octavesOf } from '../../../workers/kernels/lattice.ts';
import type { LabelPlane, Plane } from '../../../workers/kernels/plane.ts';
import { rimTable } from '../../../workers/kernels/press-edges.ts';
import { overprints } from '../../../workers/kernels/press-print.ts';
import { cellThresholds, screenAxes } from '../../../workers/kernels/screen/am.ts';
import { emptyLabels, flatPlane, randomPicture, randomPlane, sharedBytes } from '../support/pictures.ts';
import { randomOf, shuffled } from '../support/random.ts';

const width = 61;
const height = 53;
const PIXELS = width * height;

/** A kernel with everything it reads and everything it writes. */
interface Trial {
  run(from: number, to: number): void;
  reads: readonly ArrayBufferView[];
  writes: readonly ArrayBufferView[];
  /** Rows, or columns, of what it writes. */
  extent: number;
}

const plane = () => flatPlane(width, height);
const tones = (seed: number) => randomPlane(width, height, seed);
const table = Uint8Array.from({ length: 256 }, (_, v) => (v * 7 + 3) & 255);

function someLabels(): LabelPlane {
  const labels = emptyLabels(width, height);
  const { data } = randomPicture(width, height, 0.4, 3);
  components({ data, width, height, from: 0, to: 0, neighbours: 4, labels: labels.data });
  return labels;
}

/** Distances along columns to marks of some density; what other kernels go on from. */
function columnsTo(data: Uint8Array, lowest: number, limit: number, framed: boolean): Uint16Array {
  const out = new Uint16Array(PIXELS);
  bandKernels.columnDistance({ data, width, height, lowest, highest: 255, limit, framed, out }, 0, width);
  return out;
}

function inksOf(count: number) {
  const inks = Array.from({ length: count }, (_, i) => ({
    id: `i${i}`,
    name: `Ink ${i}`,
    lab: [80 - 9 * i, 30 - 13 * i, 20 + 7 * i] as [number, number, number],
    opacity: 0.02,
  }));
  return { paper: { lab: [95, 0, -2] as [number, number, number], surface: 'uncoated' as const }, inks };
}

function paint(count: number) {
  const random = randomOf(count);
  const steps = [0, 0, 51, 128, 255];
  const plates: Plane[] = Array.from({ length: count }, () => {
    const plate = plane();
    for (let i = 0; i < PIXELS; i++) plate.data[i] = steps[Math.floor(random() * steps.length)]!;
    return plate;
  });
  const toScreen = [1.2, -0.1, 0, 0, 1, 0, 0, -0.2, 1.3];
  return { plates, texture: tones(7), depth: 0.12, toScreen, encoding: table, out: sharedBytes(PIXELS * 3) };
}

const TRIALS: Record<keyof typeof bandKernels, () => Trial> = {
  areaMask() {
    const [line, out] = [tones(16), plane()];
    const labels = someLabels();
    const members = Uint8Array.from({ length: PIXELS }, (_, label) => (label % 3) & 1);
    const shapes = [
      [
        [5.2, 3.1],
        [50, 9.7],
        [30.4, 48.2],
      ] as const,
    ];
    const near = [
      {
        path: [
          [2, 40],
          [58, 44.5],
        ] as const,
        radius: 5.5,
      },
    ];
    const args = { out, shapes, regions: { labels, members }, line: { plane: line, near } };
    return {
      run: (a, b) => bandKernels.areaMask(args, a, b),
      reads: [line.data, labels.data, members],
      writes: [out.data],
      extent: height,
    };
  },
  chooseBy() {
    const [mask, inside, outside] = [randomPicture(width, height, 0.5, 4), tones(17), tones(18)];
    const out = new Uint8Array(PIXELS);
    const args = { width, mask: mask.data, inside: inside.data, outside: outside.data, invert: true, out };
    return {
      run: (a, b) => bandKernels.chooseBy(args, a, b),
      reads: [mask.data, inside.data, outside.data],
      writes: [out],
      extent: height,
    };
  },
  layArt() {
    const [plate, art, out] = [tones(19), tones(20), plane()];
    const place = { xx: 0.8, xy: 0.3, x0: -4.5, yx: -0.3, yy: 0.8, y0: 12.25 };
    const args = { plate, art, place, strength: 200, does: 'lay', out } as const;
    return {
      run: (a, b) => bandKernels.layArt(args, a, b),
      reads: [plate.data, art.data],
      writes: [out.data],
      extent: height,
    };
  },
  markPlate() {
    const [plate, out] = [tones(21), plane()];
    const lattice = latticeOf(11);
    const points = [
      [8, 8, 4],
      [30, 25.5, 7],
      [52, 44, 2],
    ] as const;
    const box = [0, 0, width, height] as const;
    const marks = (['lift', 'lift-to', 'lay', 'set'] as const).flatMap((does, i) =>
      (['clean', 'dry', 'stipple'] as const).map((edge, k) => ({
        does,
        tint: 60 + 40 * i,
        edge,
        points,
        box,
        seed: 3 * i + k,
      })),
    );
    const args = { plate, out, marks, lattice, pixelMm: 0.05 };
    return {
      run: (a, b) => bandKernels.markPlate(args, a, b),
      reads: [plate.data, lattice],
      writes: [out.data],
      extent: height,
    };
  },
  changeDepth() {
    const [before, after] = [tones(14), tones(15)];
    const columns = columnsTo(randomPicture(width, height, 0.05, 1).data, 255, 7, false);
    const out = new Uint8Array(PIXELS);
    const args = { before, after, columns, table: table.slice(0, 40), out };
    return {
      run: (a, b) => bandKernels.changeDepth(args, a, b),
      reads: [before.data, after.data, columns],
      writes: [out],
      extent: height,
    };
  },
  columnDistance() {
    const { data } = randomPicture(width, height, 0.05, 1);
    const out = new Uint16Array(PIXELS);
    const args = { data, width, height, lowest: 255, highest: 255, limit: 9, framed: false, out };
    return {
      run: (a, b) => bandKernels.columnDistance(args, a, b),
      reads: [data],
      writes: [out],
      extent: width,
    };
  },
  coverage() {
    const pixels = Uint8Array.from({ length: PIXELS * 4 }, (_, i) => (i * 73 + (i >> 5)) & 255);
    const line = plane();
    const full = Uint8Array.from({ length: 24 }, (_, slot) => (slot % 3) * 90);
    const reading = { channel: 'colour', paper: [255, 240, 210], full } as const;
    const args = { pixels, bands: 4, reading, line } as const;
    return {
      run: (a, b) => bandKernels.coverage(args, a, b),
      reads: [pixels, full],
      writes: [line.data],
      extent: height,
    };
  },
  deckle() {
    const pixels = randomPlane(width * 3, height, 30).data;
    const out = sharedBytes(PIXELS * 3);
    const lattice = latticeOf(6);
    const octaves = octavesOf(1, 3, 6, 0.1);
    const edge = {
      width,
      height,
      pixelMm: 0.1,
      deckleMm: 1,
      lattice,
      octaves,
      ground: [9, 99, 200],
    } as const;
    const run = (a: number, b: number) => bandKernels.deckle({ pixels, out, ...edge }, a, b);
    return { run, reads: [pixels], writes: [out], extent: height };
  },
  depth() {
    const columns = columnsTo(randomPicture(width, height, 0.05, 1).data, 255, 9, false);
    const out = new Uint8Array(PIXELS);
    const args = { columns, width, table: table.slice(0, 40), beyond: 255, out };
    return { run: (a, b) => bandKernels.depth(args, a, b), reads: [columns], writes: [out], extent: height };
  },
  enlarge() {
    const [from, out] = [tones(37), flatPlane(3 * width, 3 * height)];
    return {
      run: (a, b) => bandKernels.enlarge({ from, out, times: 3 }, a, b),
      reads: [from.data],
      writes: [out.data],
      extent: 3 * height,
    };
  },
  eraseMarks() {
    const labels = someLabels().data;
    const stays = Uint8Array.from({ length: PIXELS }, (_, i) => i & 1);
    const line = tones(2);
    const out = plane();
    const run = (a: number, b: number) => bandKernels.eraseMarks({ labels, line, stays, out }, a, b);
    return { run, reads: [labels, stays, line.data], writes: [out.data], extent: height };
  },
  evenLight() {
    const line = tones(16);
    const out = plane();
    const light = Uint16Array.from({ length: 7 * 6 }, (_, i) => 2000 + ((i * 577) % 2000));
    const run = (a: number, b: number) => bandKernels.evenLight({ line, out, light, side: 9 }, a, b);
    return { run, reads: [line.data, light], writes: [out.data], extent: height };
  },
  fill() {
    const labels = someLabels();
    const tints = Uint8Array.from({ length: PIXELS }, (_, i) => (i * 31) & 255);
    const plates = [
      { out: plane(), tints },
      { out: plane(), tints: tints.slice().reverse() },
    ];
    const [from, to] = [Uint8Array.of(20, 0), Uint8Array.of(200, 255)];
    const box = [0, 0, width, height] as const;
    const path = [
      [4, 6],
      [30, 40.5],
      [55, 12],
    ] as const;
    const shapes = ['linear', 'radial', 'path'] as const;
    const fades = shapes.map((shape, i) => ({ label: i + 1, shape, path, box, from, to }));
    return {
      run: (a, b) => bandKernels.fill({ labels, plates, fades }, a, b),
      reads: [labels.data, tints, from, to],
      writes: plates.map(({ out }) => out.data),
      extent: height,
    };
  },
  fillPinholes() {
    const line = tones(17);
    const labels = new Uint32Array(PIXELS);
    const { data } = line;
    components({ data, width, height, from: 0, to: 127, neighbours: 4, labels });
    const fills = Uint8Array.from({ length: PIXELS }, (_, label) => (label % 3 === 1 ? 1 : 0));
    const out = plane();
    const run = (a: number, b: number) => bandKernels.fillPinholes({ labels, line, fills, out }, a, b);
    return { run, reads: [labels, data, fills], writes: [out.data], extent: height };
  },
  grain() {
    const plate = tones(4);
    const near = tones(5);
    const out = plane();
    const lattice = latticeOf(3);
    const tile = grainTile('cloud');
    const field = tileField(lattice, tile, 'cloud', 0.4, 9);
    const shares = levelShares(field, [width * 0.05, height * 0.05]);
    const strong = { near, table: gatherTable(shares, 20, 1, 0.1) };
    const look = { field, pixelMm: 0.05, table: gatherTable(shares, 60, 0.5, 0.1), edge: strong };
    const run = (a: number, b: number) => bandKernels.grain({ plate, out, ...look }, a, b);
    return { run, reads: [plate.data, near.data, lattice, tile], writes: [out.data], extent: height };
  },
  grow() {
    const labels = someLabels().data;
    const sites = Uint8Array.from(labels, (label) => (label === 0 ? 0 : 255));
    const columns = columnsTo(sites, 255, 5, false);
    const names = Uint32Array.from({ length: PIXELS }, (_, i) => (i === 0 ? 0 : 1 + (i % 7)));
    const out = new Uint32Array(PIXELS);
    const run = (a: number, b: number) =>
      bandKernels.grow({ labels, names, columns, width, height, reach2: 20.5, out }, a, b);
    return { run, reads: [labels, names, columns], writes: [out], extent: height };
  },
  heavier() {
    const line = randomPicture(width, height, 0.05, 4);
    const columns = columnsTo(line.data, 1, 4, false);
    const out = plane();
    const run = (a: number, b: number) =>
      bandKernels.heavier({ line, columns, radius: 2.3, inverted: false, out }, a, b);
    return { run, reads: [line.data, columns], writes: [out.data], extent: height };
  },
  inkOnTooth() {
    const [plate, texture, out] = [tones(31), tones(32), plane()];
    const run = (a: number, b: number) => bandKernels.inkOnTooth({ plate, texture, take: 0.6, out }, a, b);
    return { run, reads: [plate.data, texture.data], writes: [out.data], extent: height };
  },
  inkShare() {
    const plate = randomPicture(width, height, 0.5, 4);
    const out = plane();
    const run = (a: number, b: number) => bandKernels.inkShare({ plate, reach: 5, least: 8, out }, a, b);
    return { run, reads: [plate.data], writes: [out.data], extent: height };
  },
  labelEdges() {
    const labels = someLabels();
    const out = plane();
    const run = (a: number, b: number) => bandKernels.labelEdges({ labels, out }, a, b);
    return { run, reads: [labels.data], writes: [out.data], extent: height };
  },
  nearDistance() {
    const columns = columnsTo(randomPicture(width, height, 0.02, 1).data, 255, 6, true);
    const distance2 = new Uint16Array(PIXELS);
    const zones = new Uint8Array(PIXELS);
    const run = (a: number, b: number) =>
      bandKernels.nearDistance({ columns, width, near2: 9.5, limit2: 30, distance2, zones }, a, b);
    return { run, reads: [columns], writes: [distance2, zones], extent: height };
  },
  offset() {
    const plate = tones(5);
    const out = plane();
    const place = { xx: 0.999, xy: 0.013, x0: -1.37, yx: -0.013, yy: 1.002, y0: 2.61 };
    const run = (a: number, b: number) => bandKernels.offset({ plate, out, place }, a, b);
    return { run, reads: [plate.data], writes: [out.data], extent: height };
  },
  paperBlocks() {
    const line = tones(18);
    const levels = new Uint8Array(13 * 11);
    const run = (a: number, b: number) => bandKernels.paperBlocks({ line, side: 5, levels }, a, b);
    return { run, reads: [line.data], writes: [levels], extent: 11 };
  },
  paperNear() {
    const share = tones(20);
    const out = plane();
    const run = (a: number, b: number) => bandKernels.paperNear({ share, out }, a, b);
    return { run, reads: [share.data], writes: [out.data], extent: height };
  },
  paperTexture() {
    const out = plane();
    const lattice = latticeOf(2);
    const look = {
      tooth: 0.6,
      toothMm: 0.4,
      fibres: 1,
      fibresAlong: [1, 0],
      fibresSpread: 0.4,
      flecks: 1,
      flecksPerDm2: 900,
      flecksMm: 1,
      laid: 0.5,
      laidMm: 0.9,
      seed: 5,
    } as const;
    const args = { out, lattice, pixelMm: 0.1, look };
    const run = (a: number, b: number) => bandKernels.paperTexture(args, a, b);
    return { run, reads: [lattice], writes: [out.data], extent: height };
  },
  plateSets() {
    const plates = [tones(31), tones(32), tones(33)];
    const out = new Uint16Array(PIXELS);
    return {
      run: (a, b) => bandKernels.plateSets({ plates, least: 90, out }, a, b),
      reads: plates.map(({ data }) => data),
      writes: [out],
      extent: height,
    };
  },
  pressEdges() {
    const [plate, near, wide, out] = [tones(21), tones(22), tones(23), plane()];
    const lattice = latticeOf(4);
    const octaves = octavesOf(0.5, 2, 4, 0.05);
    const squeeze = { share: near, rims: rimTable(0.3) };
    const args = {
      plate,
      out,
      squeeze,
      flooding: { share: wide, give: 0.8 },
      lattice,
      octaves,
      pixelMm: 0.05,
    };
    const run = (a: number, b: number) => bandKernels.pressEdges(args, a, b);
    return { run, reads: [plate.data, near.data, wide.data], writes: [out.data], extent: height };
  },
  pressPrint() {
    const [plate, out] = [tones(24), plane()];
    const spots = (['speck', 'void', 'hickey'] as const).map((as, k) => ({
      x: 1,
      y: 0.6 + k,
      radius: 0.6,
      as,
      seed: k,
    }));
    const repeats = [{ xx: -1, yy: 1, x0: width - 3, y0: 2, laid: overprints(0.2) } as const];
    const map = {
      data: Float32Array.from({ length: 20 }, (_, i) => 1 - i / 40),
      width: 4,
      height: 5,
      cellMm: 0.9,
    };
    const args = { plate, out, pixelMm: 0.05, map, film: 0.9, repeats, spots };
    const run = (a: number, b: number) => bandKernels.pressPrint(args, a, b);
    return { run, reads: [plate.data, map.data], writes: [out.data], extent: height };
  },
  printLine() {
    const [fill, line, knockout, out] = [tones(6), tones(7), tones(8), plane()];
    const run = (a: number, b: number) =>
      bandKernels.printLine({ fill, line, knockout, tint: 200, out }, a, b);
    return { run, reads: [fill.data, line.data, knockout.data], writes: [out.data], extent: height };
  },
  proof() {
    const args = paint(3);
    const { size, data } = proofTable(printModel(inksOf(3)));
    const reads = [...args.plates.map((plate) => plate.data), args.texture.data, args.encoding, data];
    const run = (a: number, b: number) => bandKernels.proof({ ...args, size, table: data }, a, b);
    return { run, reads, writes: [args.out], extent: height };
  },
  proofMany() {
    const args = paint(6);
    const print = inksOf(6);
    const reads = [...args.plates.map((plate) => plate.data), args.texture.data, args.encoding];
    const run = (a: number, b: number) => bandKernels.proofMany({ ...args, print }, a, b);
    return { run, reads, writes: [args.out], extent: height };
  },
  reduceCoverage() {
    const from = tones(9);
    const to = flatPlane(21, 18);
    const run = (a: number, b: number) => bandKernels.reduceCoverage({ from, to, scale: 3 }, a, b);
    return { run, reads: [from.data], writes: [to.data], extent: 18 };
  },
  reduceLabels() {
    const from = someLabels();
    const to = emptyLabels(21, 18);
    const run = (a: number, b: number) => bandKernels.reduceLabels({ from, to, scale: 3 }, a, b);
    return { run, reads: [from.data], writes: [to.data], extent: 18 };
  },
  relabel() {
    const from = someLabels().data;
    const to = new Uint32Array(PIXELS);
    const names = Uint32Array.from({ length: PIXELS }, (_, i) => PIXELS - i);
    const run = (a: number, b: number) => bandKernels.relabel({ from, to, width, table: names }, a, b);
    return { run, reads: [from, names], writes: [to], extent: height };
  },
  sauvola() {
    const line = tones(19);
    const out = plane();
    const args = { line, out, reach: 6, k: 0.3, half: 30, sure: 220 };
    const run = (a: number, b: number) => bandKernels.sauvola(args, a, b);
    return { run, reads: [line.data], writes: [out.data], extent: height };
  },
  scanTexture() {
    const [tile, out] = [randomPlane(16, 16, 33), plane()];
    const run = (a: number, b: number) =>
      bandKernels.scanTexture({ tile, step: 0.37, strength: 1.5, out }, a, b);
    return { run, reads: [tile.data], writes: [out.data], extent: height };
  },
  screenAm() {
    const [plate, out] = [tones(38), plane()];
    const tone = Uint16Array.from({ length: 256 }, (_, v) => v * 257);
    const args = { plate, out, tone, axes: screenAxes(45, 15, 600), cell: cellThresholds('round') };
    return {
      run: (a, b) => bandKernels.screenAm(args, a, b),
      reads: [plate.data, tone, args.cell],
      writes: [out.data],
      extent: height,
    };
  },
  screenFm() {
    const [plate, out] = [tones(39), plane()];
    const tone = Uint16Array.from({ length: 256 }, (_, v) => v * 257);
    const tile = Uint16Array.from({ length: 256 }, (_, i) => (i * 40503) & 0xffff);
    const args = { plate, out, tone, tile, side: 16, dot: 3, shift: [5, 7] as const };
    return {
      run: (a, b) => bandKernels.screenFm(args, a, b),
      reads: [plate.data, tone, tile],
      writes: [out.data],
      extent: height,
    };
  },
  setEdges() {
    const sets = new Uint16Array(PIXELS);
    bandKernels.plateSets(
      { plates: [randomPicture(width, height, 0.2, 36)], least: 20, out: sets },
      0,
      height,
    );
    const out = new Uint8Array(PIXELS);
    return {
      run: (a, b) => bandKernels.setEdges({ sets, width, height, out }, a, b),
      reads: [sets],
      writes: [out],
      extent: height,
    };
  },
  showThrough() {
    const front = randomPlane(width * 3, height, 41).data;
    const back = { data: randomPlane(90 * 4, 70, 42).data, width: 90, height: 70, bands: 4 };
    const out = sharedBytes(PIXELS * 3);
    const light = Float64Array.from({ length: 256 }, (_, v) => v / 255);
    const args = {
      front,
      width,
      height,
      back,
      bare: [0.9, 0.8, 0.7],
      share: 0.4,
      light,
      encoding: table,
      out,
    };
    const run = (a: number, b: number) => bandKernels.showThrough(args, a, b);
    return { run, reads: [front, back.data, light, table], writes: [out], extent: height };
  },
  shrinkProof() {
    const from = sharedBytes(PIXELS * 3);
    from.forEach((_, i) => {
      from[i] = i * 97 + (i >> 4);
    });
    const [toWidth, toHeight] = [37, 41];
    const to = sharedBytes(toWidth * toHeight * 4);
    const light = Float64Array.from({ length: 256 }, (_, v) => v / 255);
    const ground: [number, number, number] = [240, 230, 220];
    const args = { from, width, height, to, toWidth, toHeight, light, encoding: table, ground };
    const run = (a: number, b: number) => bandKernels.shrinkProof(args, a, b);
    return { run, reads: [from, light, table], writes: [to], extent: toHeight };
  },
  shrinkRough() {
    const pixels = randomPlane(width * 4, height, 16).data;
    const to = { width: 21, height: 18, rgba: sharedBytes(21 * 18 * 4) };
    const args = { pixels, width, height, bands: 4, scale: 3, to };
    const run = (a: number, b: number) => bandKernels.shrinkRough(args, a, b);
    return { run, reads: [pixels], writes: [to.rgba], extent: to.height };
  },
  slack() {
    const plates = [randomPicture(width, height, 0.5, 34), randomPicture(width, height, 0.1, 35)];
    const sets = new Uint16Array(PIXELS);
    bandKernels.plateSets({ plates, least: 20, out: sets }, 0, height);
    const { data } = plates[1]!;
    const toChange = new Uint8Array(PIXELS);
    bandKernels.toChange({ data, width, height, least: 20, limit: 9, out: toChange }, 0, width);
    const out = new Uint16Array(PIXELS);
    const edges = new Uint8Array(PIXELS);
    bandKernels.setEdges({ sets, width, height, out: edges }, 0, height);
    const args = { sets, edges, width, height, plate: 1, toChange, reach: 9, out };
    return {
      run: (a, b) => bandKernels.slack(args, a, b),
      reads: [sets, edges, toChange],
      writes: [out],
      extent: height,
    };
  },
  squaredDistance() {
    const columns = columnsTo(randomPicture(width, height, 0.02, 1).data, 255, 65_534, true);
    const out = new Uint32Array(PIXELS);
    const run = (a: number, b: number) => bandKernels.squaredDistance({ columns, width, out }, a, b);
    return { run, reads: [columns], writes: [out], extent: height };
  },
  drawMarks() {
    const out = plane();
    const pieces = [
      { shape: 'stroke', from: [3.2, 1.1], to: [width - 4.5, height - 2.3], width: 2.6 },
      { shape: 'box', box: [5, 2.4, 20, 11.6], value: 128 },
    ] as const;
    const run = (a: number, b: number) => {
      out.data.fill(7, a * width, b * width);
      bandKernels.drawMarks({ plane: out, pieces }, a, b);
    };
    return { run, reads: [], writes: [out.data], extent: height };
  },
  filmSide() {
    const [from, grey] = [tones(21), plane()];
    const film = { plane: from, grey, mirrored: true, negative: true, oneBit: false };
    const run = (a: number, b: number) => bandKernels.filmSide(film, a, b);
    return { run, reads: [from.data], writes: [grey.data], extent: height };
  },
  inkLayer() {
    const from = tones(22);
    const to = sharedBytes(PIXELS * 4);
    const run = (a: number, b: number) => bandKernels.inkLayer({ plane: from, ink: [200, 30, 90], to }, a, b);
    return { run, reads: [from.data], writes: [to], extent: height };
  },
  interleave() {
    const planes = [tones(23), tones(24), tones(25)];
    const to = sharedBytes(PIXELS * 3);
    const run = (a: number, b: number) => bandKernels.interleave({ planes, to }, a, b);
    return { run, reads: planes.map(({ data }) => data), writes: [to], extent: height };
  },
  multiplyLayers() {
    const planes = [tones(26), tones(27)];
    const inks = [
      [10, 200, 90],
      [250, 20, 130],
    ] as const;
    const to = sharedBytes(PIXELS * 3);
    const run = (a: number, b: number) =>
      bandKernels.multiplyLayers({ planes, inks, paper: [250, 245, 230], to }, a, b);
    return { run, reads: planes.map(({ data }) => data), writes: [to], extent: height };
  },
  place() {
    const [from, to] = [tones(28), plane()];
    const placed = { from, to, at: [-4, 7], box: [2, 3, width - 3, height - 1], beyond: 'edge' } as const;
    const run = (a: number, b: number) => bandKernels.place(placed, a, b);
    return { run, reads: [from.data], writes: [to.data], extent: height };
  },
  toChange() {
    const { data } = randomPicture(width, height, 0.03, 40);
    const out = sharedBytes(PIXELS);
    return {
      run: (a, b) => bandKernels.toChange({ data, width, height, least: 20, limit: 9, out }, a, b),
      reads: [data],
      writes: [out],
      extent: width,
    };
  },
  toneTable() {
    const from = tones(10);
    const to = plane();
    const run = (a: number, b: number) => bandKernels.toneTable({ from, to, table }, a, b);
    return { run, reads: [from.data, table], writes: [to.data], extent: height };
  },
  trap() {
    const labels = emptyLabels(width, height);
    for (let i = 0; i < PIXELS; i++)
      labels.data[i] = 1 + ((Math.floor((i % width) / 9) + Math.floor(i / width / 7)) % 3);
    const columns = new Uint16Array(new SharedArrayBuffer(PIXELS * 2));
    const line = randomPicture(width, height, 0.7, 8);
    const paper = { lowest: 0, highest: 127, limit: 5, framed: false };
    bandKernels.columnDistance({ data: line.data, width, height, ...paper, out: columns }, 0, width);
    const plates = [22, 23].map((seed) => ({ from: tones(seed), out: plane() }));
    const rules = {
      starts: Uint32Array.of(0, 0, 2, 3, 4),
      targets: Uint32Array.of(2, 3, 3, 1),
      radius: Float64Array.of(3.3, 5, 2, 4.5),
      plates: Uint16Array.of(1, 3, 2, 3),
      holdsBack: Uint8Array.of(0, 1, 0, 1),
      reach: 5,
    };
    const args = { labels, plates, rules, cover: { line, columns, enough2: 2 } };
    return {
      run: (a, b) => bandKernels.trap(args, a, b),
      reads: [labels.data, line.data, columns, ...plates.map(({ from }) => from.data)],
      writes: plates.map(({ out }) => out.data),
      extent: height,
    };
  },
  within() {
    const [before, after, mask, out] = [tones(11), tones(12), tones(13), plane()];
    const run = (a: number, b: number) => bandKernels.within({ before, after, mask, out }, a, b);
    return { run, reads: [before.data, after.data, mask.data], writes: [out.data], extent: height };
  },
};

function hashOf(views: readonly ArrayBufferView[]): string {
  const hash = createHash('sha256');
  for (const { buffer, byteOffset, byteLength } of views)
    hash.update(new Uint8Array(buffer, byteOffset, byteLength).slice());
  return hash.digest('hex');
}

/** What a kernel writes over bytes that were all `before`. */
function written(trial: Trial, before: number, slices: readonly [number, number][]): string {
  for (const { buffer, byteOffset, byteLength } of trial.writes)
    new Uint8Array(buffer, byteOffset, byteLength).fill(before);
  for (const [from, to] of slices) trial.run(from, to);
  return hashOf(trial.writes);
}

/** `extent` cut into slices of the given sizes, over and over. */
function cut(extent: number, sizes: readonly number[]): [number, number][] {
  const slices: [number, number][] = [];
  for (let from = 0, k = 0; from < extent; k++) {
    const to = Math.min(extent, from + sizes[k % sizes.length]!);
    slices.push([from, to]);
    from = to;
  }
  return slices;
}

describe.each(Object.entries(TRIALS))('%s', (_, make) => {
  const trial = make();
  const { extent } = trial;
  const whole = written(trial, 0xaa, [[0, extent]]);

  it('writes every byte of its output', () => {
    expect(written(trial, 0x55, [[0, extent]])).toBe(whole);
  });

  it('writes the same bytes for any split of its range, in any order', () => {
    for (const sizes of [[1], [7, 3, 11, 1, 5], [64], [extent - 1]])
      expect(written(trial, 0x55, shuffled(cut(extent, sizes), 8))).toBe(whole);
  });

  it('writes the same bytes when slices are done twice', () => {
    const slices = cut(extent, [9, 4]);
    expect(written(trial, 0x55, shuffled([...slices, ...slices], 2))).toBe(whole);
  });

  it('writes nothing for an empty range', () => {
    const untouched = written(trial, 0x55, []);
    expect(written(trial, 0x55, [[5, 5]])).toBe(untouched);
    expect(untouched).not.toBe(whole);
  });

  it('leaves what it reads as it was', () => {
    const before = hashOf(trial.reads);
    written(trial, 0x55, cut(extent, [6]));
    expect(hashOf(trial.reads)).toBe(before);
  });
});
