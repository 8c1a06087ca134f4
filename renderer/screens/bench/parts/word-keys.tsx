/** Places that take words instead of figures: the choices as keys, shims by what fits, or a line of text. */

import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { ShimChoices } from '../bench-casting.ts';
import type { Spot } from '../reading-view.ts';
import css from './word-keys.module.css';

export function WordKeys({
  spot,
  operation,
  text,
  onText,
  onTake,
  onPrevious,
  onNext,
}: {
  spot: Spot;
  operation: number | null;
  text: string;
  onText: (text: string) => void;
  onTake: (words: string) => void;
  onPrevious: () => void;
  onNext: () => void;
}) {
  const { row } = spot;
  return (
    <fieldset className={css.keys} aria-label={row.words}>
      <div className={css.choices}>
        {isShims(spot) && (
          <>
            <FitAll spot={spot} operation={operation} />
            <ShimKeys spot={spot} onTake={onTake} />
          </>
        )}
        {row.choices.map((choice, n) => (
          <Button key={choice} onPress={() => onTake(choice)}>
            {n < MOST_KEYS && (
              <small aria-hidden="true" className={css.key}>
                {n + 1}
              </small>
            )}
            {choice}
          </Button>
        ))}
        {row.choices.length === 0 && !isShims(spot) && (
          <Field label={row.words} quiet value={text} onChange={onText} maxLength={240} />
        )}
      </div>
      <div className={css.foot}>
        <Button onPress={onPrevious}>Before</Button>
        <Button onPress={onNext}>Next</Button>
      </div>
    </fieldset>
  );
}

/** Choices that have a digit of their own. */
const MOST_KEYS = 9;

/** Shims laid under a spring are words of the shop: `0.5 + 1.0`. */
const isShims = (spot: Spot): boolean => spot.row.quantity === 'shims-fitted';

/** All springs shimmed as the plan says: one touch for the row. */
function FitAll({ spot, operation }: { spot: Spot; operation: number | null }) {
  const fit = useAppCommand('readings/fit-shims');
  return (
    <div className={css.all}>
      <Button
        kind="go"
        wide
        working={fit.pending}
        onPress={() => void fit.send({ casting: spot.sheet.casting.id, operation })}
      >
        All as chosen
      </Button>
      <ErrorNote error={fit.error} />
    </div>
  );
}

/** Stacks that could go under this spring, best first; the best is what the plan says. */
function ShimKeys({ spot, onTake }: { spot: Spot; onTake: (words: string) => void }) {
  const place = spot.column.spot;
  const choices = useAppQuery(
    'readings/get-shim-choice',
    { casting: spot.sheet.casting.id, spot: place ?? 1 },
    { enabled: place !== null, keep: true },
  ).data;
  if (!choices) return null;
  return (
    <>
      {choices.advice.map((sentence) => (
        <p key={sentence} className={css.advice}>
          {sentence}
        </p>
      ))}
      {inOrder(choices).map((candidate) => (
        <Button
          key={candidate.text}
          onPress={() => onTake(candidate.text)}
          pressed={candidate.text === choices.best?.text}
        >
          <span>
            {candidate.text}
            <small className={css.makes}>
              {candidate.heightText} ({candidate.errorText}){candidate.within ? '' : ', out'}
            </small>
          </span>
        </Button>
      ))}
    </>
  );
}

/** Enough to choose from with a glove. */
const MOST = 6;
const inOrder = (choices: ShimChoices) => choices.candidates.slice(0, MOST);
