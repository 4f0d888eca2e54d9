import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jsonSchemas } from '../../../src/graph/json-schema.ts';
import { proposalRulesSchema } from '../../../src/graph/proposal-rules.ts';
import { styleOf } from '../../../src/graph/style.ts';
import { DEMO_SHELF } from '../../../src/ink/demo-inks.ts';
import { defaultJob, THREE_INKS, withRecipes } from '../support/jobs.ts';
import { replaced, without } from '../support/json.ts';
import { misfits } from '../support/json-schema.ts';

const SCHEMAS = jsonSchemas();
const misfitsOf = (name: string, value: unknown) => misfits(SCHEMAS[name] as Record<string, unknown>, value);

const DRAWING = { width: 640, height: 480, ppi: 600, mm: [27.093, 20.32] };
const REGION = { id: 'r1', label: 1, areaMm2: 12.5, anchorMm: [3.2, 4], touchesFrame: false };
const COMPLAINT = { code: 'plate-empty', severity: 'warning', message: 'Plate 2 is empty.' };

/** One value of each published shape, as the contract with other programs describes it. */
const GOOD: Record<string, object> = {
  job: withRecipes(defaultJob({}), { r1: { straw: 40, soot: 100 } }, { straw: 10 }),
  report: {
    version: 1,
    drawing: DRAWING,
    regions: [{ ...REGION, recipe: { straw: 40 } }],
    plates: [
      {
        id: 'straw',
        ink: 'straw',
        order: 1,
        pass: 1,
        ppi: 600,
        file: 'plate-1-straw.png',
        coveragePercent: 12.5,
      },
      { id: 'soot', ink: 'soot', order: 2, pass: 1, ppi: 600, file: null, coveragePercent: 0 },
    ],
    complaints: [COMPLAINT, { ...COMPLAINT, placeMm: [1, 2], measure: 0.15 }],
    timings: { 'clean-line': 12 },
    peakBytes: 123_456_789,
  },
  regions: {
    version: 1,
    drawing: DRAWING,
    regions: [
      {
        ...REGION,
        boxMm: [1, 2, 6, 6],
        neighbours: [{ id: 'r2', sharedMm: 3.5 }],
        inside: null,
      },
    ],
    walls: [{ id: 'w1', widthMm: 0.3, placeMm: [1, 2], between: ['r1', 'r2'] }],
    openGaps: [{ widthMm: 3, placeMm: [4, 5] }],
    complaints: [],
  },
  survey: {
    version: 1,
    drawing: DRAWING,
    line: { coveragePercent: 12, widthsMm: { thinnest: 0.1, low: 0.2, middle: 0.4, high: 0.8 } },
    cleaning: {
      light: { evened: true, spreadPercent: 21 },
      threshold: { how: 'local', levelPercent: 20 },
      turnedDeg: -1.2,
      specks: { count: 1, areaMm2: 0.01, largest: [{ boxMm: [1, 1, 2, 2], placeMm: [1, 2], areaMm2: 0.01 }] },
      pinholes: { count: 0, areaMm2: 0 },
    },
    openings: { closed: [{ widthMm: 0.3, placeMm: [1, 2] }], open: [] },
    complaints: [],
  },
  inks: {
    paper: { lab: [95, 0, -2], surface: 'uncoated' },
    takeUp: 0.95,
    inks: THREE_INKS.inks,
    measured: [{ inks: ['straw', 'brick'], lab: [48, 40, 40] }],
  },
  shelf: DEMO_SHELF,
  'ink-sets': {
    version: 1,
    sets: [
      {
        inks: ['pantile', 'damson'],
        mean: 1.25,
        worst: 3,
        withinError: true,
        colours: [{ wanted: [50, 30, 10], recipe: { pantile: 55 }, lab: [51, 30, 12], distance: 1.25 }],
      },
    ],
    tried: 78,
    everySet: true,
  },
  matches: {
    version: 1,
    drawing: DRAWING,
    fit: { scalePercent: 100, shiftMm: [0, -1.5], turnDeg: 2 },
    regions: [
      {
        id: 'r1',
        anchorMm: [3, 4],
        areaMm2: 12,
        wantedLab: [60, 30, 20],
        recipe: { straw: 40 },
        lab: [61, 29, 20],
        distance: 1.2,
        outOfReach: false,
        alternatives: [{ recipe: {}, lab: [95, 0, -2], distance: 30 }],
      },
    ],
    bare: ['r2'],
    complaints: [],
  },
  style: styleOf(
    defaultJob({}),
    'Packets',
    proposalRulesSchema.parse({ palette: [{ recipe: { straw: 40 } }] }),
  ),
  carry: {
    regions: [
      { new: 'r1', old: 'r1', state: 'kept', confidence: 0.97 },
      { old: 'r2', state: 'gone', confidence: 1 },
    ],
    transform: { scale: 1, shiftMm: [0, 0.2], turnDeg: 0 },
    complaints: [],
  },
  batch: {
    version: 1,
    style: 'Packets',
    items: [
      {
        drawing: 'tray.svg',
        folder: 'tray',
        madeFrom: 'a1',
        state: 'done',
        message: null,
        regions: 4,
        complaints: 0,
        plates: [{ id: 'straw', coveragePercent: 12.5 }],
      },
    ],
  },
};

/** The shapes that are lists. */
const LISTS: Record<string, object[]> = {
  recipes: [{ pantile: 55, damson: 0 }, {}],
  predictions: [{ recipe: { pantile: 55 }, lab: [51, 30, 12], hex: '#a06a5c', onScreen: true }],
};

describe('the published JSON Schemas', () => {
  it('are those of the files and lists that others read', () => {
    expect(Object.keys(SCHEMAS).sort()).toEqual([...Object.keys(GOOD), ...Object.keys(LISTS)].sort());
  });

  it.each(Object.entries(LISTS))(
    '%s fits what Keyblock reads or writes, and no more than that',
    (name, list) => {
      expect(misfitsOf(name, list)).toEqual([]);
      expect(misfitsOf(name, list[0]).length).toBeGreaterThan(0);
      expect(misfitsOf(name, [{ ...list[0], pantile: 101, sparkle: 1 }]).length).toBeGreaterThan(0);
    },
  );

  it.each(Object.keys(GOOD))('%s says which draft it follows', (name) => {
    expect(SCHEMAS[name]).toHaveProperty('$schema', 'https://json-schema.org/draft/2020-12/schema');
  });

  it.each(Object.entries(GOOD))('%s fits what Keyblock writes', (name, value) => {
    expect(misfitsOf(name, JSON.parse(JSON.stringify(value)))).toEqual([]);
  });

  it.each(Object.entries(GOOD))('%s knows no other field', (name, value) => {
    expect(misfitsOf(name, { ...value, sparkle: 1 })).toEqual(['$ knows no sparkle']);
  });

  it.each([
    ['job', 'format'],
    ['job', 'version'],
    ['job', 'graph'],
    ['job', 'colourways'],
    ['report', 'plates'],
    ['report', 'peakBytes'],
    ['regions', 'walls'],
    ['survey', 'cleaning'],
    ['inks', 'paper'],
    ['shelf', 'inks'],
    ['ink-sets', 'sets'],
    ['matches', 'fit'],
    ['style', 'rules'],
    ['batch', 'items'],
    ['carry', 'transform'],
  ])('%s needs %s', (name, field) => {
    expect(misfitsOf(name, without(GOOD[name]!, field))).toEqual([`$ has no ${field}`]);
  });

  it.each(['register', 'assets'])('job does not need %s', (field) => {
    expect(misfitsOf('job', without(GOOD.job!, field))).toEqual([]);
  });

  it.each([
    ['job', 'format', 'keyblock-style'],
    ['job', 'version', 2],
    ['job', 'graph.nodes.0.id', '../x'],
    ['job', 'graph.nodes.0.bypassed', 'no'],
    ['job', 'colourways', []],
    ['job', 'colourways.0.recipes.r1.soot', 101],
    ['report', 'plates.0.order', 0],
    ['report', 'regions.0.anchorMm', [1]],
    ['report', 'complaints.0.severity', 'shrug'],
    ['regions', 'walls.0.between', ['r1']],
    ['inks', 'paper.surface', 'wet'],
    ['inks', 'inks.0.gain', 0.6],
    ['inks', 'inks.0.lab', [200, 0, 0]],
    ['inks', 'inks', []],
  ])('%s refuses %s = %j', (name, path, field) => {
    expect(misfitsOf(name, replaced(GOOD[name], path, field)).length).toBeGreaterThan(0);
  });

  it('job fits the job that version 1 saved', () => {
    const saved: unknown = JSON.parse(readFileSync(new URL('job-version-1.json', import.meta.url), 'utf8'));
    expect(misfitsOf('job', saved)).toEqual([]);
  });
});
