import controls from './Controls.module.css';
import styles from './Docket.module.css';
import type { NumberField } from './fields.ts';
import own from './InkSet.module.css';
import type { InkSetSettings } from './ink-edits.ts';
import { NumberInput } from './NumberInput.tsx';
import { strings } from './strings.ts';

const words = strings.takeUps;

type TakeUps = InkSetSettings['takeUps'];

const PERCENT: NumberField = {
  as: 'number',
  name: 'percent',
  title: words.percent,
  help: words.help,
  usual: 95,
  least: 0,
  most: 100,
  whole: false,
  unit: '%',
  nullable: false,
};

/** Wet on wet in one pass and dry between passes, as the prediction takes them (see the README's limits). */
const WET = 74;

interface TakeUpListProps {
  set: InkSetSettings;
  commit(takeUps: TakeUps, words: string, gesture?: string): string | null;
}

/** How fully the inks of one pass take on those of another, for every pair of passes the plates have. */
export function TakeUpList({ set, commit }: TakeUpListProps) {
  const passes = [...new Set(set.plates.map(({ pass }) => pass))];
  const pairs = passes.flatMap((below, i) => passes.slice(i).map((above) => ({ below, above })));
  const shared = pairs.filter(
    ({ below, above }) => below !== above || set.plates.filter(({ pass }) => pass === below).length > 1,
  );
  const usual = (below: number, above: number) => (below === above ? WET : set.takeUpPercent);
  const others = (below: number, above: number) =>
    set.takeUps.filter((each) => each.below !== below || each.above !== above);
  return (
    <ul className={own.inks}>
      {shared.map(({ below, above }) => {
        const given = set.takeUps.find((each) => each.below === below && each.above === above);
        const name = below === above ? words.within(below) : words.on(above, below);
        return (
          <li key={name} className={controls.part}>
            <span>{name}</span>
            <NumberInput
              field={{ ...PERCENT, usual: usual(below, above), nullable: true }}
              label={words.of(name)}
              value={given?.percent ?? null}
              placeholder={String(usual(below, above))}
              commit={(percent, text, gesture) => {
                const rest = others(below, above);
                const next = percent === null ? rest : [...rest, { below, above, percent }];
                return commit(next, `${name} ${text || strings.empty}`, gesture);
              }}
            />
          </li>
        );
      })}
      {shared.length === 0 && <li className={styles.quiet}>{words.none}</li>}
    </ul>
  );
}
