import { z } from 'zod';
import type { GraphNode, Job } from './job.ts';
import { canonicalJson } from './keys.ts';
import type { NodeKind } from './node-kind.ts';

/** Settings that a person kept under a name, for nodes of a kind. */
export const keptSettingsSchema = z.strictObject({
  kind: z.string().min(1).max(40),
  name: z.string().min(1).max(80),
  settings: z.record(z.string(), z.json()),
});

export const keptListSchema = z.array(keptSettingsSchema).max(200);

export type KeptSettings = z.infer<typeof keptSettingsSchema>;
type Settings = GraphNode['settings'];

/** What of a node's settings a preset of its kind decides. */
export function keepable(kind: NodeKind, settings: Settings): Settings {
  const names = Object.keys(kind.presets?.shape.shape ?? {});
  return Object.fromEntries(Object.entries(settings).filter(([name]) => names.includes(name)));
}

/** A node's settings with a preset in place of all that presets decide; the rest stays. */
export function withPreset(kind: NodeKind, settings: Settings, preset: Settings): Settings {
  const decided = keepable(kind, settings);
  const others = Object.entries(settings).filter(([name]) => !Object.hasOwn(decided, name));
  return { ...Object.fromEntries(others), ...keepable(kind, preset) };
}

/** Whether a node is set as a preset says, usual settings filled in. */
export function isSetAs(kind: NodeKind, settings: Settings, preset: Settings): boolean {
  const full = (of: Settings) => kind.presets?.shape.safeParse(keepable(kind, of)).data;
  return canonicalJson(full(settings)) === canonicalJson(full(preset));
}

/** The job with settings kept under a name; they take the place of others of that kind and name. */
export function withKept(job: Job, kept: KeptSettings): Job {
  const others = (job.kept ?? []).filter(({ kind, name }) => kind !== kept.kind || name !== kept.name);
  return { ...job, kept: [...others, kept] };
}

/** The job without kept settings of that kind and name. */
export function withoutKept(job: Job, { kind, name }: Pick<KeptSettings, 'kind' | 'name'>): Job {
  const { kept = [], ...others } = job;
  const left = kept.filter((each) => each.kind !== kind || each.name !== name);
  return left.length > 0 ? { ...others, kept: left } : others;
}
