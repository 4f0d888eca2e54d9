import controls from './Controls.module.css';
import styles from './Docket.module.css';
import type { NumberField } from './fields.ts';
import { InkChip } from './InkChip.tsx';
import own from './InkSet.module.css';
import { addPlate, type InkSetSettings, MOST, movePlate, type Plate, setPass } from './ink-edits.ts';
import { NumberInput } from './NumberInput.tsx';
import { strings } from './strings.ts';

const words = strings.plates;

const PASS: NumberField = {
  as: 'number',
  name: 'pass',
  title: words.passTitle,
  help: words.onePass,
  usual: 1,
  least: 1,
  most: MOST,
  whole: true,
  unit: '',
  nullable: false,
};

export interface PlateListProps {
  set: InkSetSettings;
  commit(plates: readonly Plate[], words: string, gesture?: string): string | null;
}

/** The plates in print order: ink, pass and place of each. */
export function PlateList({ set, commit }: PlateListProps) {
  const { plates, inks } = set;
  const inkOf = (plate: Plate) => inks.find(({ id }) => id === plate.ink);
  const nameOf = (plate: Plate) => inkOf(plate)?.name ?? plate.id;
  const move = (from: number, to: number) =>
    commit(movePlate(plates, from, to), words.moved(nameOf(plates[from]!), to + 1));
  const row = (plate: Plate, i: number) => (
    <li key={plate.id} className={own.order}>
      <span className={own.place}>{i + 1}</span>
      <InkChip ink={inkOf(plate)} tear={i + 1} />
      <select
        className={controls.select}
        aria-label={words.inkOf(i + 1)}
        value={plate.ink}
        onChange={({ target }) => {
          const next = { ...plate, ink: target.value };
          commit(
            plates.map((each) => (each === plate ? next : each)),
            `${i + 1} ${nameOf(next)}`,
          );
        }}
      >
        {inks.map((ink) => (
          <option key={ink.id} value={ink.id}>
            {ink.name}
          </option>
        ))}
      </select>
      <span className={own.pass}>
        <span aria-hidden="true">{words.pass}</span>
        <NumberInput
          field={PASS}
          label={words.passOf(nameOf(plate))}
          value={plate.pass}
          commit={(pass, text, gesture) =>
            commit(setPass(plates, i, pass ?? 1), `${nameOf(plate)} ${words.pass} ${text}`, gesture)
          }
        />
      </span>
      <span className={own.moves}>
        <button
          type="button"
          className={styles.word}
          disabled={i === 0}
          aria-label={words.earlierOf(nameOf(plate))}
          onClick={() => move(i, i - 1)}
        >
          {words.earlier}
        </button>
        <button
          type="button"
          className={styles.word}
          disabled={i === plates.length - 1}
          aria-label={words.laterOf(nameOf(plate))}
          onClick={() => move(i, i + 1)}
        >
          {words.later}
        </button>
        <button
          type="button"
          className={styles.word}
          disabled={plates.length === 1}
          aria-label={words.remove(nameOf(plate))}
          onClick={() =>
            commit(
              plates.filter((each) => each !== plate),
              words.gone(nameOf(plate)),
            )
          }
        >
          {words.removeShort}
        </button>
      </span>
    </li>
  );
  return (
    <>
      <ol className={own.orders}>{plates.map(row)}</ol>
      <button
        type="button"
        className={styles.add}
        disabled={plates.length >= MOST}
        onClick={() => commit(addPlate(set, inks.at(-1)!.id), `${plates.length + 1} ${inks.at(-1)!.name}`)}
      >
        {words.add}
      </button>
    </>
  );
}
