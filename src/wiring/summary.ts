import { spoken } from '../docket/control.ts';
import { type Field, fieldsOf } from '../docket/fields.ts';
import { shown } from '../docket/numbers.ts';
import type { GraphNode, Job } from '../graph/job.ts';
import { canonicalJson } from '../graph/keys.ts';
import type { NodeKind } from '../graph/node-kind.ts';
import { strings } from './strings.ts';

/** Most parts of a summary: what fits one line. */
const MOST = 2;

/** Fields by kind: schemas do not change while the app runs. */
const known = new WeakMap<NodeKind, readonly Field[]>();

function fields(kind: NodeKind): readonly Field[] {
  const found = known.get(kind) ?? fieldsOf(kind);
  known.set(kind, found);
  return found;
}

/**
 * One line on a node: its file, its plates, or the settings that differ from usual; where none does, the first
 * ones as they are. Empty for a node without settings.
 */
export function summaryOf(node: GraphNode, kind: NodeKind, assets: Job['assets']): string {
  const all = fields(kind);
  const { plates } = node.settings;
  if (Array.isArray(plates)) return strings.plates(plates.length);
  const changed = all.filter(({ name, usual }) => {
    const value = node.settings[name];
    return value !== undefined && canonicalJson(value) !== canonicalJson(usual);
  });
  const tell = (list: readonly Field[]) =>
    list
      .flatMap((field) => partOf(field, node.settings[field.name] ?? field.usual, assets) ?? [])
      .slice(0, MOST);
  const parts = tell(changed);
  return (parts.length > 0 ? parts : tell(all)).join(' \u00b7 ');
}

/** A setting in two or three words; null where it has none. */
function partOf(field: Field, value: unknown, assets: Job['assets']): string | null {
  if (field.as === 'file')
    return typeof value === 'string' ? (assets[value]?.file ?? strings.noFile) : strings.noFile;
  if (field.as === 'number' && typeof value === 'number')
    return `${field.title.toLowerCase()} ${shown(value, field.unit)}`;
  if (field.as === 'choice') return spoken(String(value));
  if (field.as === 'per-plate' && value !== null && typeof value === 'object') {
    const count = Object.keys(value).length;
    return count > 0 ? `${field.title.toLowerCase()}` : null;
  }
  return null;
}
