/** The sizes beside a survey: grid, face, finish, deepest pit, what was taken off before. A touch goes to one. */
import type { SurveyField } from '#core/readings/compute/deck-survey-model.ts';
import { classes } from '../../../kit/class-names.ts';
import { rowKey } from '../deck-view.ts';
import css from './deck-lines.module.css';

export function SizeList({
  fields,
  current,
  textOf,
  onChoose,
}: {
  fields: readonly SurveyField[];
  /** Row the hand is at. */
  current: string | null;
  /** Typed here and not come back yet. */
  textOf: (row: string) => string | undefined;
  onChoose: (row: string) => void;
}) {
  return (
    <ul className={classes(css.list, css.roomy)} aria-label="Sizes of the survey">
      {fields.map((field) => {
        const key = rowKey(field.quantity, field.point, field.stage);
        const text = textOf(key) ?? field.figure.text;
        const { marks } = field.figure;
        const small = marks.length > 0 || !field.fromSheet ? marks : ['from the sheet'];
        return (
          <li key={key}>
            <button
              type="button"
              aria-current={key === current ? 'true' : undefined}
              className={classes(key === current && css.now)}
              onClick={() => onChoose(key)}
            >
              <span>
                {field.words}
                {small.length > 0 && <small> {[...new Set(small)].join(', ')}</small>}
              </span>{' '}
              <b>{text || 'not known'}</b> {text && field.unitMark}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
