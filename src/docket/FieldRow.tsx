import { useId } from 'react';
import { canonicalJson } from '../graph/keys.ts';
import { apply } from './apply.ts';
import { Control } from './Control.tsx';
import { spoken } from './control.ts';
import styles from './Docket.module.css';
import type { Field } from './fields.ts';
import { shown } from './numbers.ts';
import { strings } from './strings.ts';

/** The usual value in words, where it is short enough to name. */
function usualWords(field: Field): string {
  if (field.as === 'number')
    return typeof field.usual === 'number' ? shown(field.usual, field.unit) : strings.empty;
  if (field.as === 'choice') return spoken(String(field.usual));
  return field.as === 'seed' ? String(field.usual) : '';
}

/** One setting: its title, its control, what it does, and a way back to the usual value where it differs. */
export function FieldRow({ node, field, set }: { node: string; field: Field; set: unknown }) {
  const help = useId();
  const value = set ?? field.usual;
  const differs = set !== undefined && canonicalJson(set) !== canonicalJson(field.usual);
  const change = { node, name: field.name, title: field.title };
  const usual = usualWords(field);
  return (
    <div className={styles.field} data-as={field.as}>
      <div className={styles.top}>
        <span className={styles.title} aria-hidden="true">
          {field.title}
        </span>
        <Control
          field={field}
          label={field.title}
          value={value}
          node={node}
          describedBy={help}
          commit={(next, words, gesture) => apply(change, next, words || strings.empty, gesture)}
        />
      </div>
      <p className={styles.help}>
        <span id={help}>{field.help}</span>
        {differs && field.as !== 'file' && field.as !== 'hand-edits' && (
          <button
            type="button"
            className={styles.reset}
            title={strings.resetOf(field.title, usual)}
            aria-label={strings.resetOf(field.title, usual)}
            onClick={() => apply(change, undefined, '')}
          >
            {strings.reset}
          </button>
        )}
      </p>
    </div>
  );
}
