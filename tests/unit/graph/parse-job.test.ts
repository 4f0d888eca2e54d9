import { describe, expect, it } from 'vitest';
import { BadInput } from '../../../src/graph/complaint.ts';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { defaultJob } from '../support/jobs.ts';
import { replaced, without } from '../support/json.ts';

const GOOD = defaultJob({});

const text = (path: string, field: unknown) => JSON.stringify(replaced(GOOD, path, field));

/** The same with a piece of JSON that no value turns into. */
const raw = (path: string, piece: string) => text(path, '@').replace('"@"', () => piece);

const wire = (from: string, to: string) => {
  const [[node, port], [target, input]] = [from.split('.'), to.split('.')];
  return { from: { node, port }, to: { node: target, port: input } };
};

const withWire = (from: string, to: string) => text('graph.wires', [...GOOD.graph.wires, wire(from, to)]);

const withColourways = (...ids: string[]) =>
  text(
    'colourways',
    ids.map((id) => ({ id, name: 'A' })),
  );

const entry = (id: string) => ({ id, anchorMm: [1, 1], areaMm2: 4, boxMm: [0, 0, 2, 2] });

/** What the line must say, beside each bad job. */
const BAD: Record<string, [string, RegExp]> = {
  'no text at all': ['', /not valid JSON/],
  'text that is no JSON': ['Dear printer,', /not valid JSON/],
  'a job cut off in the middle': [JSON.stringify(GOOD).slice(0, 200), /not valid JSON/],
  'NaN, which JSON does not know': [raw('graph.nodes.1.settings.speckMm2', 'NaN'), /NaN .* not allowed/],
  'a number beyond all numbers': [
    raw('graph.nodes.1.settings.speckMm2', '1e999'),
    /nodes\.1\.settings\.speckMm2/,
  ],
  'an infinite tint': [raw('colourways.0.others', '{"soot":1e999}'), /colourways\.0\.others\.soot/],
  'a list': ['[]', /no Keyblock job/],
  'nothing but null': ['null', /no Keyblock job/],
  'JSON of another program': ['{"format":"recipe-book","version":1}', /no Keyblock job/],
  'a style in place of a job': [text('format', 'keyblock-style'), /no Keyblock job/],
  'a job of a newer Keyblock': [text('version', 999), /newer Keyblock \(version 999/],
  'a job of before the first version': [text('version', 0), /version 0 cannot be opened/],
  'half a version': [text('version', 1.5), /no version number/],
  'a version in words': [text('version', 'one'), /no version number/],
  'a job without a version': [JSON.stringify(without(GOOD, 'version')), /no version number/],
  'a job without a graph': [JSON.stringify(without(GOOD, 'graph')), /^graph: /],
  'a job without a name': [text('name', ''), /^name: /],
  'an unknown field of the job': [text('sparkle', 1), /"sparkle"/],
  'an unknown field of a node': [text('graph.nodes.3.sparkle', 1), /graph\.nodes\.3: unknown "sparkle"/],
  'an unknown kind of node': [
    text('graph.nodes.3.kind', 'sorcery'),
    /node "ink-set" .* unknown kind "sorcery"/,
  ],
  'a kind that every object has': [text('graph.nodes.3.kind', 'toString'), /unknown kind "toString"/],
  'an unknown setting': [
    text('graph.nodes.1.settings', { sparkle: 1 }),
    /settings of "clean-line".*"sparkle"/,
  ],
  'a setting above its range': [
    text('graph.nodes.1.settings', { speckMm2: 5.1 }),
    /settings of "clean-line", field speckMm2: .*5/,
  ],
  'a setting below its range': [
    text('graph.nodes.2.settings', { gapMm: -0.1 }),
    /settings of "closed-regions", field gapMm: .*0/,
  ],
  'a setting of the wrong sort': [
    text('graph.nodes.2.settings', { gapMm: '0.5' }),
    /settings of "closed-regions", field gapMm: .*number/,
  ],
  'a word that is no choice': [
    text('graph.nodes.6.settings', { fills: 'burnt' }),
    /settings of "key-line", field fills/,
  ],
  'two nodes of one id': [text('graph.nodes.1.id', 'line-drawing'), /two nodes are called "line-drawing"/],
  'a node id that is no file name': [text('graph.nodes.1.id', '../clean'), /^graph\.nodes\.1\.id: /],
  'a wire from a node that is not there': [withWire('ghost.plates', 'press-file.sheet'), /no node "ghost"/],
  'a wire to a node that is not there': [withWire('proof.proof', 'ghost.proof'), /no node "ghost"/],
  'a wire from an output that is not there': [
    withWire('ink-set.plates', 'press-file.sheet'),
    /Ink set \("ink-set"\) has no output "plates"; it has inks/,
  ],
  'a wire to an input that is not there': [
    withWire('ink-set.inks', 'proof.inks'),
    /Proof \("proof"\) has no input "inks"; it has plates, paper/,
  ],
  'a wire from an output that every object has': [
    withWire('ink-set.constructor', 'proof.paper'),
    /no output "constructor"/,
  ],
  'a wire between unlike ports': [
    withWire('ink-set.inks', 'press-file.sheet'),
    /Ink set gives inks, but the input "sheet" of Press file takes sheet/,
  ],
  'two wires into one input': [
    withWire('fill-plates.plates', 'press-file.plates'),
    /two wires end in press-file\.plates/,
  ],
  'wires in a circle': [
    text('graph.wires', [
      wire('key-line.plates', 'plate-grain.plates'),
      wire('plate-grain.plates', 'register-offset.plates'),
      wire('register-offset.plates', 'key-line.plates'),
    ]),
    /circle: (?=.*key-line -> plate-grain)(?=.*plate-grain -> register-offset)(?=.*register-offset -> key-line)/,
  ],
  'a wire from a node to itself': [
    text('graph.wires', [wire('key-line.plates', 'key-line.plates')]),
    /circle: key-line -> key-line/,
  ],
  'no colourway': [text('colourways', []), /^colourways: /],
  'a colourway in use that is not there': [
    text('colourway', 'dusk'),
    /colourway in use, "dusk".* it holds a/,
  ],
  'two colourways of one id': [withColourways('a', 'a'), /two colourways are called "a"/],
  'a tint above a solid': [
    text('colourways.0.recipes', { r1: { soot: 101 } }),
    /colourways\.0\.recipes\.r1\.soot: .*100/,
  ],
  'two remembered regions of one id': [
    text('register', { labelMap: null, next: 2, regions: [entry('r1'), entry('r1')] }),
    /"r1"/,
  ],
  'an asset in another folder': [
    text('assets', { ['0'.repeat(64)]: { file: '../x.png' } }),
    /plain file name/,
  ],
  'an asset without a hash for its name': [
    text('assets', { picture: { file: 'x.png' } }),
    /^assets\.picture: /,
  ],
  'settings nested beyond all reason': [
    raw('graph.nodes.1.settings.x', `${'['.repeat(20_000)}${']'.repeat(20_000)}`),
    /settings|nested|deep/,
  ],
  'a line break in the name of a kind': [text('graph.nodes.3.kind', 'sor\ncery'), /node "ink-set"/],
  'text beyond the size of any job': [' '.repeat(64 * 1024 * 1024 + 1), /larger than 64 MB/],
};

describe('a bad job is refused with one line that names the place', () => {
  it.each(Object.entries(BAD))('%s', (_, [job, line]) => {
    const refused = refusalOf(job);
    expect(refused).toBeInstanceOf(BadInput);
    expect(refused.message).toMatch(line);
    expect(refused.message).not.toContain('\n');
  });

  const NAMES = ['__proto__', 'constructor', 'prototype'];
  const PLACES = ['graph.nodes.1.settings', 'colourways.0.recipes', 'assets', 'register'];
  it.each(NAMES.flatMap((name) => PLACES.map((place) => [name, place])))(
    'a field %s in %s',
    (name, place) => {
      const refused = refusalOf(raw(place!, `{"${name}":{"polluted":true}}`));
      expect(refused).toBeInstanceOf(BadInput);
      expect(refused.message).toContain(`"${name}"`);
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    },
  );
});

describe('a good job', () => {
  it('comes back as it was written', () => {
    expect(parseJob(JSON.stringify(GOOD), nodeKinds)).toEqual(GOOD);
  });

  it('may begin with a byte order mark', () => {
    expect(parseJob(`\uFEFF${JSON.stringify(GOOD)}`, nodeKinds)).toEqual(GOOD);
  });

  it('gets what it leaves out: settings, recipes, register and assets', () => {
    const bare = {
      format: 'keyblock-job',
      version: 1,
      name: 'Bare',
      graph: { nodes: [{ id: 'inks', kind: 'ink-set' }], wires: [] },
      colourways: [{ id: 'a', name: 'A' }],
      colourway: 'a',
    };
    expect(parseJob(JSON.stringify(bare), nodeKinds)).toEqual({
      ...bare,
      graph: { nodes: [{ id: 'inks', kind: 'ink-set', settings: {}, bypassed: false }], wires: [] },
      colourways: [{ id: 'a', name: 'A', recipes: {}, others: {} }],
      register: { labelMap: null, next: 1, regions: [] },
      groups: [],
      press: null,
      meant: [],
      pins: [],
      redraw: null,
      assets: {},
    });
  });

  it('may use names that merely resemble reserved ones', () => {
    const job = text('colourways.0.recipes', { constructor2: { soot: 10 } });
    expect(parseJob(job, nodeKinds).colourways[0]!.recipes).toEqual({ constructor2: { soot: 10 } });
  });
});

function refusalOf(job: string): Error {
  try {
    parseJob(job, nodeKinds);
  } catch (error) {
    return error as Error;
  }
  throw new Error('the job was taken');
}
