import type { ComponentType } from 'react';
import styles from './Controls.module.css';
import type { ControlProps } from './control.ts';
import type { Field, GroupField } from './fields.ts';
import { strings } from './strings.ts';

export interface GroupProps extends ControlProps<GroupField> {
  /** The control for a part. */
  Part: ComponentType<ControlProps<Field>>;
}

/** A value as an object of values; any other value as an empty one. */
export function asRecord(value: unknown): Readonly<Record<string, unknown>> {
  return value !== null && typeof value === 'object' && !Array.isArray(value) ? { ...value } : {};
}

/** Settings that belong together, each with its own control. */
export function GroupControl({ field, label, value, node, commit, Part }: GroupProps) {
  const record = asRecord(value);
  return (
    <span className={styles.group}>
      {field.parts.map((part) => {
        const title = strings.parts[part.name] ?? part.title;
        return (
          <span key={part.name} className={styles.part} data-as={part.as}>
            <span aria-hidden="true">{title}</span>
            <Part
              field={{ ...part, title }}
              label={`${label}, ${title.toLowerCase()}`}
              value={record[part.name] ?? part.usual}
              node={node}
              commit={(next, words, gesture) =>
                commit({ ...record, [part.name]: next }, `${title.toLowerCase()} ${words}`, gesture)
              }
            />
          </span>
        );
      })}
    </span>
  );
}
