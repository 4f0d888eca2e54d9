import type { NumberField } from '../../../docket/fields.ts';
import { NumberInput } from '../../../docket/NumberInput.tsx';
import {
  FIGURE_SOURCES,
  type FigureSource,
  PRESS_FIGURES,
  type Press,
  type PressFigure,
} from '../../../graph/press.ts';
import { FIGURE_TITLES, unitOf } from '../../../press/profiles.ts';
import own from './Press.module.css';
import { setPressFigure } from './press-edits.ts';
import { pressTexts as texts } from './strings.ts';

function fieldOf(figure: PressFigure): NumberField {
  const unit = unitOf(figure);
  return {
    as: 'number',
    name: figure,
    title: FIGURE_TITLES[figure],
    help: '',
    usual: undefined,
    least: 0,
    most: unit === '%' ? 1200 : 2000,
    whole: false,
    unit,
    nullable: true,
  };
}

/** Every figure of a press with where it comes from. */
export function FigureRows({ press }: { press: Press }) {
  return (
    <ul className={own.figures}>
      {PRESS_FIGURES.map((figure) => {
        const known = press.figures[figure];
        const title = FIGURE_TITLES[figure];
        return (
          <li key={figure}>
            <span aria-hidden="true">{title}</span>
            <NumberInput
              field={fieldOf(figure)}
              label={title}
              value={known?.value ?? null}
              placeholder={texts.empty}
              commit={(value, _, gesture) => {
                setPressFigure(figure, value, 'printer', gesture);
                return null;
              }}
            />
            {known && (
              <select
                aria-label={texts.source(title)}
                value={known.source}
                onChange={({ target }) => setPressFigure(figure, known.value, target.value as FigureSource)}
              >
                {FIGURE_SOURCES.map((source) => (
                  <option key={source} value={source}>
                    {texts.sources[source]}
                  </option>
                ))}
              </select>
            )}
          </li>
        );
      })}
    </ul>
  );
}
