import { describe, expect, it } from 'vitest';
import { proposalRulesSchema } from '../../../src/graph/proposal-rules.ts';
import { jobInStyle, parseStyle, styleOf } from '../../../src/graph/style.ts';
import { withRough } from '../../../src/graph/with-rough.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { defaultJob, reopened, withSettings } from '../support/jobs.ts';

const RULES = proposalRulesSchema.parse({ palette: [{ recipe: { straw: 40 } }] });
const hash = (letter: string) => letter.repeat(64);

const job = withSettings(defaultJob({ asset: hash('a'), widthMm: 120, channel: 'darkness' }), {
  'closed-regions': { gapMm: 0.8, edits: [{ id: 'e1', does: 'open-wall', atMm: [1, 2] }] },
  'plate-grain': { seed: 7 },
});
const settingsOf = (of: typeof job, id: string) => of.graph.nodes.find((node) => node.id === id)?.settings;

describe('a house style', () => {
  it('keeps the wiring and the settings, and leaves out what belongs to one drawing', () => {
    const { graph } = styleOf(withRough(job, 'rough.png', hash('b')), 'Packets', RULES);
    expect(graph.nodes.some(({ kind }) => kind === 'match-rough')).toBe(false);
    const of = (id: string) => graph.nodes.find((node) => node.id === id)!.settings;
    expect(of('line-drawing')).toEqual({ channel: 'darkness' });
    expect(of('closed-regions')).toEqual({ gapMm: 0.8 });
    expect(of('plate-grain')).toEqual({ seed: 7 });
    expect(graph.wires).toHaveLength(job.graph.wires.length);
  });

  it('comes back from its file as it was', () => {
    const style = styleOf(job, 'Packets', RULES);
    expect(parseStyle(JSON.stringify(style), nodeKinds)).toEqual(style);
  });

  it('makes a job of a drawing that can be saved and opened', () => {
    const made = jobInStyle(styleOf(job, 'Packets', RULES), 'bean.svg', hash('c'), { widthMm: 90 });
    expect(settingsOf(made, 'line-drawing')).toEqual({ channel: 'darkness', widthMm: 90, asset: hash('c') });
    expect(made.assets).toEqual({ [hash('c')]: { file: 'bean.svg' } });
    expect(made.colourways[0]!.recipes).toEqual({});
    expect(reopened(made)).toEqual(made);
  });

  it.each([
    ['{"format":"keyblock-job"}', /no house style/],
    ['[]', /no house style/],
    ['{', /JSON/],
    [JSON.stringify({ ...styleOf(job, 'Packets', RULES), name: '' }), /name/],
    [JSON.stringify({ ...styleOf(job, 'Packets', RULES), graph: { nodes: [], wires: [] } }), /Line drawing/],
    [JSON.stringify({ ...styleOf(job, 'Packets', RULES), rules: { palette: [] } }), /rules/],
    [
      JSON.stringify(styleOf(withSettings(job, { 'closed-regions': { gapMm: -1 } }), 'Packets', RULES)),
      /settings of "closed-regions"/,
    ],
  ])('is refused in one sentence: %s', (text, message) => {
    expect(() => parseStyle(text, nodeKinds)).toThrow(message);
  });
});
