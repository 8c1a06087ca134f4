/** The place on the face the hand is at: the field, how it would read, what stands there, and where a feeler went under. */
import { Button } from '../../../kit/button.tsx';
import type { ReadingEntry } from '../hooks/use-reading-entry.ts';
import type { TableHand } from '../hooks/use-table-hand.ts';
import type { Spot } from '../reading-view.ts';
import css from './deck-place.module.css';
import { ReadingField } from './reading-field.tsx';
import { ReadingQuestion } from './reading-question.tsx';
import { TwoReadings } from './two-readings.tsx';

export function DeckPlace({
  spot,
  hand,
  entry,
  words,
  position,
  hint,
  counts,
  onRow,
  children,
}: {
  spot: Spot;
  hand: TableHand;
  entry: ReadingEntry;
  /** `column 3, row 2` */
  words: string;
  /** `point 8 of 15` */
  position: string;
  /** What a bare figure counts here. */
  hint: string;
  /** Bare digits count steps of the dial. */
  counts: boolean;
  /** Up and down. */
  onRow: (by: 1 | -1) => void;
  /** More about this place: choices, acts. */
  children?: React.ReactNode;
}) {
  const { preview, question } = entry;
  const { cell, row, sheet } = spot;
  const reading = cell?.reading ?? null;
  return (
    <section className={css.place} aria-label={words}>
      <div className={css.head}>
        <p className={css.words}>
          <b>{words}</b>
          <br />
          <span className={css.quiet}>{[position, hint].filter(Boolean).join(', ')}</span>
        </p>
        <ReadingField
          label={words}
          text={hand.text}
          standing={cell?.text ?? ''}
          unit={unitOf(hand.text, counts ? '' : row.unitMark)}
          shut={sheet.locked}
          onText={hand.setText}
          onNext={entry.next}
          onPrevious={entry.previous}
          onRow={onRow}
          onPlus={entry.plus}
          onTimes={entry.times}
        />
      </div>
      {cell?.state === 'two readings' && <TwoReadings label={words} readings={cell.choose} />}
      {question && <ReadingQuestion question={question} onTake={entry.take} onAgain={entry.again} />}
      <p role="status" className={css.becomes}>
        {!question && (preview?.becomes || entry.undone)}
      </p>
      {children}
      {hand.text === '' && (
        <p className={css.before}>
          {cell?.earlier.map((one) => (
            <s key={one.id}>
              {one.text || 'taken back'} {one.by}
            </s>
          ))}
          {reading && (
            <span>
              {reading.text} by {reading.by}
              {reading.tool ? `, ${reading.tool}` : ', gauge not named'}
              {reading.reason && `, ${reading.reason}`}
            </span>
          )}
          {cell?.marks.map((one) => (
            <span key={one}>{one}</span>
          ))}
        </p>
      )}
      <div className={css.acts}>
        {entry.takeBack && (
          <Button kind="out" onPress={entry.takeBack}>
            Take back
          </Button>
        )}
        {entry.notHere && (
          <Button kind="out" onPress={entry.notHere}>
            Nothing to measure here
          </Button>
        )}
      </div>
    </section>
  );
}

/** The unit behind what is typed; nothing where the text says it, or a bare figure counts something else. */
const unitOf = (text: string, unit: string): string => (/[a-z]/i.test(text) ? '' : unit);
