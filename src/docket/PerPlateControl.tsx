import { useContext } from 'react';
import styles from './Controls.module.css';
import { type Commit, type ControlProps, spoken } from './control.ts';
import shared from './Docket.module.css';
import type { ChoiceField, Field, NumberField, RecordField } from './fields.ts';
import { asRecord, GroupControl } from './GroupControl.tsx';
import { InkChip } from './InkChip.tsx';
import { NumberInput } from './NumberInput.tsx';
import { OtherSettings } from './other-settings.ts';
import { strings } from './strings.ts';
import { type PlateRow, usePlates } from './use-plates.ts';

/** The record with one plate's value set, or taken out when it is null. */
function withPlate(record: Readonly<Record<string, unknown>>, plate: string, value: unknown): object {
  const { [plate]: _, ...others } = record;
  return value === null ? others : { ...others, [plate]: value };
}

interface ValueProps<Shape> {
  field: Shape;
  label: string;
  value: unknown;
  /** Id of the node. */
  node: string;
  /** What holds for plates without a value of their own. */
  general: unknown;
  commit: Commit;
}

function PlateNumber({ field, label, value, general, commit }: ValueProps<NumberField>) {
  return (
    <NumberInput
      field={{ ...field, nullable: true }}
      label={label}
      value={typeof value === 'number' ? value : null}
      placeholder={typeof general === 'number' ? String(general) : strings.asAbove}
      commit={(next, words, gesture) => commit(next, words || strings.asAboveStep, gesture)}
    />
  );
}

function PlateChoice({ field, label, value, commit }: ValueProps<ChoiceField>) {
  return (
    <select
      className={styles.select}
      aria-label={label}
      value={typeof value === 'string' ? value : ''}
      onChange={({ target }) => commit(target.value || null, spoken(target.value) || strings.asAboveStep)}
    >
      <option value="">{strings.asAbove}</option>
      {field.words.map((word) => (
        <option key={word} value={word}>
          {spoken(word)}
        </option>
      ))}
    </select>
  );
}

/** A part of a plate's value: its number, without a slider. */
function PlainPart({ field, label, value, commit }: ControlProps<Field>) {
  if (field.as !== 'number') return null;
  return (
    <NumberInput
      field={field}
      label={label}
      value={typeof value === 'number' ? value : null}
      commit={commit}
    />
  );
}

function PlateValue({ field, ...props }: ValueProps<Field>) {
  if (field.as === 'number') return <PlateNumber field={field} {...props} />;
  if (field.as === 'choice') return <PlateChoice field={field} {...props} />;
  if (field.as === 'group') return <GroupControl field={field} {...props} Part={PlainPart} />;
  return null;
}

/** A setting by plate: one row for each plate of the ink set, empty where the general setting holds. */
export function PerPlateControl({ field, label, value, node, commit }: ControlProps<RecordField>) {
  const plates = usePlates(node);
  const others = useContext(OtherSettings);
  const record = asRecord(value);
  if (plates.length === 0) return <span className={shared.note}>{strings.noPlates}</span>;
  const row = ({ id, name, ink, order }: PlateRow) => (
    <span key={id} className={styles.plate} data-wide={field.value.as === 'group'}>
      <span className={styles.plateName}>
        <InkChip ink={ink} tear={order} />
        {name}
      </span>
      <PlateValue
        field={field.value}
        label={`${label}, ${name}`}
        value={record[id]}
        node={node}
        general={others[field.name.replace(/Of$/, '')]}
        commit={(next, words, gesture) => commit(withPlate(record, id, next), `${name} ${words}`, gesture)}
      />
    </span>
  );
  return <span className={styles.plates}>{plates.map(row)}</span>;
}
