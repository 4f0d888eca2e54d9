import type { NumberField } from '../../docket/fields.ts';
import { NumberInput } from '../../docket/NumberInput.tsx';
import type { ProposalRules } from '../../graph/proposal-rules.ts';
import { type NamedPlate, recipeText } from '../../view/plates-of.ts';
import styles from './Colourways.module.css';
import { colourwayTexts } from './strings.ts';

const texts = colourwayTexts.proposals;
const SWITCHES = ['asNow', 'likeSized', 'likePlaced', 'groups'] as const;

function field(name: string, least: number, most: number, unit: string, whole = false): NumberField {
  return {
    as: 'number',
    name,
    title: name,
    help: '',
    usual: undefined,
    least,
    most,
    whole,
    unit,
    nullable: false,
  };
}

const CONTRAST = field('contrast', 0, 100, '\u0394E');
const TOTAL = field('totalPercent', 0, 400, '%');
const COUNT = field('count', 1, 24, '', true);
const SEED = field('seed', 0, 0xffffffff, '', true);

interface RuleFieldsProps {
  rules: ProposalRules;
  count: number;
  seed: number;
  plates: readonly NamedPlate[];
  onRules(change: Partial<ProposalRules>): void;
  onCount(count: number): void;
  onSeed(seed: number): void;
}

/** The rules of a proposal. */
export function RuleFields({ rules, count, seed, plates, onRules, onCount, onSeed }: RuleFieldsProps) {
  const number = (title: string, shape: NumberField, value: number, set: (value: number) => void) => (
    <p className={styles.rule}>
      <span aria-hidden="true">{title}</span>
      <NumberInput
        field={shape}
        label={title}
        value={value}
        commit={(next) => {
          set(next ?? value);
          return null;
        }}
      />
    </p>
  );
  return (
    <>
      <h3>{texts.rules}</h3>
      {number(texts.contrast, CONTRAST, rules.contrast, (contrast) => onRules({ contrast }))}
      {SWITCHES.map((name) => (
        <label key={name} className={styles.switch}>
          <input
            type="checkbox"
            checked={rules[name]}
            onChange={({ target }) => onRules({ [name]: target.checked })}
          />
          {texts[name]}
        </label>
      ))}
      <label className={styles.rule}>
        {texts.frame}
        <select
          value={rules.frame ?? ''}
          onChange={({ target }) => onRules({ frame: target.value === '' ? null : Number(target.value) })}
        >
          <option value="">{texts.any}</option>
          {rules.palette.map(({ recipe }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the place in the palette is what the rule names
            <option key={i} value={i}>
              {recipeText(recipe, plates)}
            </option>
          ))}
        </select>
      </label>
      {number(texts.totalPercent, TOTAL, rules.totalPercent, (totalPercent) => onRules({ totalPercent }))}
      {number(texts.count, COUNT, count, onCount)}
      {number(texts.seed, SEED, seed, onSeed)}
    </>
  );
}
