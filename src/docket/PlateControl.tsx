import styles from './Controls.module.css';
import type { ControlProps } from './control.ts';
import type { PlainField } from './fields.ts';
import { strings } from './strings.ts';
import { usePlates } from './use-plates.ts';

/** One of the plates. */
export function PlateControl({ label, value, node, describedBy, commit }: ControlProps<PlainField>) {
  const plates = usePlates(node);
  return (
    <select
      className={styles.select}
      aria-label={label}
      aria-describedby={describedBy}
      value={typeof value === 'string' ? value : ''}
      onChange={({ target }) => commit(target.value, target.value || strings.lastPlate)}
    >
      <option value="">{strings.lastPlate}</option>
      {plates.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}
