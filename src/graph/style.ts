import { z } from 'zod';
import { plainFileName } from './assets.ts';
import { BadInput } from './complaint.ts';
import { newJob } from './default-graph.ts';
import { type Graph, graphSchema, type Job } from './job.ts';
import { readJson } from './json-text.ts';
import { keptListSchema } from './kept-settings.ts';
import type { NodeKinds } from './node-kind.ts';
import { checkShape } from './parse-job.ts';
import { pressSchema } from './press.ts';
import { type ProposalRules, proposalRulesSchema } from './proposal-rules.ts';
import { checkGraph } from './wiring.ts';

export const STYLE_FORMAT = 'keyblock-style';

/** A house style: a job without its drawing. Its inks and settings stand in the graph. */
export const styleSchema = z
  .strictObject({
    format: z.literal(STYLE_FORMAT),
    version: z.literal(1),
    name: z.string().min(1).max(120),
    graph: graphSchema,
    /** From what recipes come where a drawing has no rough, and by which rules. */
    rules: proposalRulesSchema,
    press: pressSchema.nullable().default(null),
    /** Settings that the person kept, to use again. */
    kept: keptListSchema.optional(),
  })
  .meta({ title: 'Keyblock house style' });

export type Style = z.infer<typeof styleSchema>;

/** Most characters of a style file: it holds no pictures. */
const MOST_CHARACTERS = 8 * 1024 * 1024;

/** What belongs to one drawing alone, by node kind: left out of a style. */
const OF_THE_DRAWING: Readonly<Record<string, readonly string[]>> = {
  'line-drawing': ['asset', 'widthMm', 'ppi'],
  'closed-regions': ['edits'],
  area: ['shapes', 'lines', 'regions'],
  'hand-marks': ['marks'],
  'paper-stock': ['asset', 'backAsset'],
};

/** Nodes that do nothing without a picture of their own: they wait for one, bypassed. */
const OF_A_PICTURE = 'plate-art';

function bare(graph: Graph): Graph {
  const nodes = graph.nodes.map((node) => {
    const gone = OF_THE_DRAWING[node.kind] ?? [];
    const settings = Object.entries(node.settings).filter(([name]) => !gone.includes(name));
    if (node.kind !== OF_A_PICTURE) return { ...node, settings: Object.fromEntries(settings) };
    const { asset: _, ...others } = node.settings;
    return { ...node, bypassed: true, settings: others };
  });
  return { ...graph, nodes };
}

/** Works on the rough of one drawing; put in again for a drawing that has one. */
const ROUGH = 'match-rough';

/** The style of a job: its graph, inks, press and the recipes it would use again. */
export function styleOf(job: Job, name: string, rules: ProposalRules): Style {
  return {
    format: STYLE_FORMAT,
    version: 1,
    name,
    graph: withoutNodes(bare(job.graph), ROUGH),
    rules,
    press: job.press,
    ...(job.kept && { kept: job.kept }),
  };
}

function withoutNodes(graph: Graph, kind: string): Graph {
  const gone = new Set(graph.nodes.flatMap((node) => (node.kind === kind ? [node.id] : [])));
  return {
    nodes: graph.nodes.filter(({ id }) => !gone.has(id)),
    wires: graph.wires.filter(({ from, to }) => !gone.has(from.node) && !gone.has(to.node)),
  };
}

/**
 * Reads the text of a style file.
 *
 * @throws BadInput with one line that names the place and what to do
 */
export function parseStyle(text: string, kinds: NodeKinds): Style {
  if (text.length > MOST_CHARACTERS) throw new BadInput('the style is larger than 8 MB; it is no style file');
  const raw = readJson(text, 'style');
  if (typeof raw !== 'object' || raw === null || (raw as { format?: unknown }).format !== STYLE_FORMAT)
    throw new BadInput(`this is no house style: it should begin with {"format":"${STYLE_FORMAT}"`);
  const style = checkShape(styleSchema, raw);
  checkGraph(style.graph, kinds);
  for (const node of style.graph.nodes)
    checkShape(kinds.get(node.kind)!.settings, node.settings, `settings of "${node.id}"`);
  if (!style.graph.nodes.some(({ kind }) => kind === 'line-drawing'))
    throw new BadInput('the style has no Line drawing node to give drawings to');
  return style;
}

/**
 * A job of a drawing in a style; its regions have no recipes yet.
 *
 * @param size printed width or ppi, where it was said
 */
export function jobInStyle(
  style: Style,
  fileName: string,
  hash: string,
  size: { widthMm?: number; ppi?: number } = {},
): Job {
  const file = plainFileName(fileName);
  const first = style.graph.nodes.find(({ kind }) => kind === 'line-drawing');
  const nodes = style.graph.nodes.map((node) =>
    node === first ? { ...node, settings: { ...node.settings, ...size, asset: hash } } : node,
  );
  const job = newJob(`${style.name}: ${file}`.slice(0, 120), { ...style.graph, nodes }, { [hash]: { file } });
  return { ...job, press: style.press, ...(style.kept && { kept: style.kept }) };
}
