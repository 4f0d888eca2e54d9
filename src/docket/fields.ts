import { z } from 'zod';
import type { NodeKind } from '../graph/node-kind.ts';

interface Named {
  name: string;
  title: string;
  help: string;
  /** What the setting is when nobody has set it; undefined when it then is nothing. */
  usual: unknown;
}

export interface NumberField extends Named {
  as: 'number';
  least: number;
  most: number;
  whole: boolean;
  unit: string;
  /** It may be left empty. */
  nullable: boolean;
}

export interface ChoiceField extends Named {
  as: 'choice';
  words: readonly string[];
}

export interface RecordField extends Named {
  as: 'per-plate';
  value: Field;
}

export interface GroupField extends Named {
  as: 'group';
  parts: readonly Field[];
}

export interface PlainField extends Named {
  /** `unknown` is for shapes that need a form of their own. */
  as: 'yes-no' | 'seed' | 'file' | 'colour' | 'hand-edits' | 'regions' | 'plate' | 'text' | 'unknown';
}

/** One setting as a form shows it. */
export type Field = NumberField | ChoiceField | RecordField | GroupField | PlainField;

type Json = z.core.JSONSchema.BaseSchema;

const UNITS: readonly [suffix: string, unit: string][] = [
  ['Mm2', 'mm2'],
  ['Mm', 'mm'],
  ['Deg', 'deg'],
  ['Percent', '%'],
];

/** Lists that are made on the print. */
const BY_HAND: ReadonlySet<string> = new Set(['edits', 'shapes', 'lines', 'marks', 'pairs']);

/** The settings of a kind as fields, made from its schema. */
export function fieldsOf(kind: NodeKind): Field[] {
  const schema = z.toJSONSchema(kind.settings, { io: 'input', unrepresentable: 'any' });
  return partsOf(schema as Json);
}

function partsOf(schema: Json): Field[] {
  return Object.entries(schema.properties ?? {}).map(([name, part]) => fieldOf(name, part as Json));
}

function fieldOf(name: string, schema: Json): Field {
  const named = {
    name,
    title: text(schema.title) || spaced(name),
    help: text(schema.help),
    usual: schema.default,
  };
  const options = (schema.anyOf ?? []) as Json[];
  const nullable = options.some(({ type }) => type === 'null');
  const core = nullable ? options.find(({ type }) => type !== 'null')! : schema;
  if (core.type === 'array' && BY_HAND.has(name)) return { ...named, as: 'hand-edits' };
  if (core.type === 'array' && name === 'regions') return { ...named, as: 'regions' };
  if (core.type === 'string' && name === 'plate') return { ...named, as: 'plate' };
  if (name === 'seed') return { ...named, as: 'seed' };
  if (core.enum) return { ...named, as: 'choice', words: core.enum.map(String) };
  if (core.type === 'boolean') return { ...named, as: 'yes-no' };
  if (core.type === 'number' || core.type === 'integer')
    return {
      ...named,
      as: 'number',
      least: core.minimum ?? Number.NEGATIVE_INFINITY,
      most: core.maximum ?? Number.POSITIVE_INFINITY,
      whole: core.type === 'integer',
      unit: text(schema.unit) || unitOf(name),
      nullable,
    };
  if (core.pattern?.includes('[0-9a-f]{64}')) return { ...named, as: 'file' };
  if (isColour(core)) return { ...named, as: 'colour' };
  if (core.type === 'string' && name === 'fileNames') return { ...named, as: 'text' };
  if (core.type !== 'object') return { ...named, as: 'unknown' };
  if (typeof core.additionalProperties === 'object') {
    const value = fieldOf(name.replace(/Of$/, ''), core.additionalProperties as Json);
    return { ...named, as: 'per-plate', value: { ...value, title: named.title } };
  }
  return { ...named, as: 'group', parts: partsOf(core) };
}

function isColour(schema: Json): boolean {
  return (
    (schema.prefixItems as unknown[] | undefined)?.length === 3 && text(schema.description).includes('Lab')
  );
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}

function unitOf(name: string): string {
  return UNITS.find(([suffix]) => name.endsWith(suffix))?.[1] ?? '';
}

/** `alongMm` as words, without its unit: "Along". */
function spaced(name: string): string {
  const suffix = UNITS.find(([end]) => name.endsWith(end))?.[0] ?? '';
  const words = name
    .slice(0, name.length - suffix.length)
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}
