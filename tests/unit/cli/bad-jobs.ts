import { defaultGraph, newJob } from '../../../src/graph/default-graph.ts';
import type { Job } from '../../../src/graph/job.ts';

/** The text of a job file that must be refused with one line that says `says`. */
export interface BadJob {
  name: string;
  text: string;
  says: RegExp;
}

const GOOD: Job = newJob('Bad in one way', defaultGraph({ asset: 'a'.repeat(64) }, {}), {
  ['a'.repeat(64)]: { file: 'gone.svg' },
});

/** The good job, changed. */
function changed(change: (job: Job) => unknown): string {
  const copy = structuredClone(GOOD);
  return JSON.stringify(change(copy) ?? copy);
}

function settings(node: string, value: unknown): string {
  return changed((job) => {
    Object.assign(job.graph.nodes.find((other) => other.id === node)!.settings, value);
  });
}

/** Later issues add their own. */
export const badJobs: BadJob[] = [
  { name: 'empty.json', text: '', says: /not valid JSON/ },
  { name: 'half.json', text: changed(() => undefined).slice(0, 900), says: /not valid JSON/ },
  {
    name: 'nan.json',
    text: changed(() => undefined).replace('"settings":{}', '"settings":{"heavierMm":NaN}'),
    says: /not valid JSON.*NaN/,
  },
  {
    name: 'infinite.json',
    text: settings('clean-line', {}).replace('"settings":{}', '"settings":{"heavierMm":1e999}'),
    says: /infinity|finite|number/i,
  },
  { name: 'list.json', text: '[1, 2]', says: /no Keyblock job/ },
  { name: 'other.json', text: '{"format":"a-recipe-for-soup","version":1}', says: /no Keyblock job/ },
  {
    name: 'newer.json',
    text: changed((job) => ({ ...job, version: 99 })),
    says: /newer Keyblock \(version 99/,
  },
  { name: 'no-version.json', text: changed(({ version: _, ...job }) => job), says: /no version number/ },
  {
    name: 'unknown-field.json',
    text: changed((job) => ({ ...job, colour: 'red' })),
    says: /unknown "colour"/,
  },
  {
    name: 'prototype.json',
    text: changed(() => undefined).replace('"name"', '"__proto__":{"admin":true},"name"'),
    says: /"__proto__"/,
  },
  { name: 'constructor.json', text: settings('clean-line', { constructor: 1 }), says: /"constructor"/ },
  {
    name: 'cycle.json',
    text: changed((job) => {
      const wire = job.graph.wires.find(({ to }) => to.node === 'key-line' && to.port === 'plates')!;
      wire.from = { node: 'plate-grain', port: 'plates' };
    }),
    says: /circle: .*(key-line -> plate-grain|plate-grain -> key-line)/,
  },
  {
    name: 'unknown-node.json',
    text: changed((job) => {
      job.graph.nodes[1]!.kind = 'clean-windows';
    }),
    says: /"clean-line" is of the unknown kind "clean-windows"/,
  },
  {
    name: 'unknown-setting.json',
    text: settings('plate-grain', { sizeInches: 1 }),
    says: /"plate-grain".*unknown "sizeInches"/,
  },
  { name: 'out-of-range.json', text: settings('plate-grain', { sizeMm: -3 }), says: /"plate-grain".*sizeMm/ },
  { name: 'wrong-type.json', text: settings('plate-grain', { seed: 'seven' }), says: /"plate-grain".*seed/ },
  {
    name: 'two-wires.json',
    text: changed((job) => {
      job.graph.wires.push(structuredClone(job.graph.wires[0]!));
    }),
    says: /each input takes one wire/,
  },
  {
    name: 'mismatch.json',
    text: changed((job) => {
      job.graph.wires[0]!.from = { node: 'paper-stock', port: 'paper' };
    }),
    says: /gives paper, but the input "drawing" of Clean line takes drawing/,
  },
  {
    name: 'loose-end.json',
    text: changed((job) => {
      job.graph.wires[0]!.from.node = 'nowhere';
    }),
    says: /no node "nowhere"/,
  },
  {
    name: 'no-press-file.json',
    text: changed((job) => {
      job.graph.nodes = job.graph.nodes.filter(({ id }) => id !== 'press-file');
      job.graph.wires = job.graph.wires.filter(({ to }) => to.node !== 'press-file');
      job.graph.nodes[0]!.settings = {};
    }),
    says: /needs a Press file node/,
  },
  {
    name: 'unwired.json',
    text: changed((job) => {
      job.graph.wires = job.graph.wires.filter(({ to }) => to.node !== 'clean-line');
      job.graph.nodes[0]!.settings = {};
    }),
    says: /Clean line \("clean-line"\) has nothing wired to its input "drawing"/,
  },
  {
    name: 'no-drawing.json',
    text: changed((job) => {
      job.graph.nodes[0]!.settings = {};
    }),
    says: /no file yet/,
  },
  {
    name: 'lost-asset.json',
    text: changed(() => undefined),
    says: /assets\/gone\.svg: there is no such file/,
  },
  {
    name: 'no-colourway.json',
    text: changed((job) => ({ ...job, colourway: 'z' })),
    says: /"z", is not in the job/,
  },
  {
    name: 'path-asset.json',
    text: changed((job) => ({ ...job, assets: { ['a'.repeat(64)]: { file: '../../secret' } } })),
    says: /plain file name/,
  },
  { name: 'not-really.keyblock', text: 'PK\u0003\u0004 and then nothing', says: /archive is damaged/ },
];
