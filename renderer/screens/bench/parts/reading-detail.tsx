/** The place the hand is at: what is typed, how it would read, where it falls between the limits, what to do. */
import type { Cell, LimitShown, SheetRow } from '#core/readings/compute/sheet-model.ts';
import { LimitScale } from '../../../kit/bench-limit-scale.tsx';
import { Verdict } from '../../../kit/mark.tsx';
import type { Preview } from '../bench-casting.ts';
import type { ReadingEntry } from '../hooks/use-reading-entry.ts';
import {
  colourOf,
  isWords,
  judgedRow,
  judgedRows,
  judgingLimit,
  limitFor,
  markOf,
  type Spot,
} from '../reading-view.ts';
import { perUnit } from '../unit-sizes.ts';
import css from './reading-detail.module.css';
import { ReadingQuestion } from './reading-question.tsx';

export function ReadingDetail({
  entry,
  spot,
  position,
  field,
}: {
  entry: ReadingEntry;
  spot: Spot;
  /** `valve 15 of 16`. */
  position: string;
  field: React.ReactNode;
}) {
  const { preview, question } = entry;
  const { row, column, cell } = spot;
  return (
    <section className={css.detail} aria-label={`${column.label}, ${row.words}`}>
      <div className={css.head}>
        <b className={css.label}>{column.label}</b>
        <span className={css.words}>
          {row.point ? `${row.words}, ${row.pointWords}` : row.words}
          <br />
          <span className={css.quiet}>{[column.words, position].filter(Boolean).join(', ')}</span>
        </span>
        {field}
      </div>
      {question && <ReadingQuestion question={question} onTake={entry.take} onAgain={entry.again} />}
      {!question && preview?.becomes && <p className={css.becomes}>{preview.becomes}</p>}
      {!question && <Scale spot={spot} preview={preview} />}
      <div className={css.low}>
        <div role="status" className={css.say}>
          {entry.undone !== '' && !preview && <p className={css.sentence}>{entry.undone}</p>}
          {preview ? <Said preview={preview} /> : <Standing spot={spot} />}
        </div>
        {!preview && cell && <Before cell={cell} onTakeBack={entry.takeBack} onNotHere={entry.notHere} />}
      </div>
    </section>
  );
}

/** The figure between its limits: with shims under it where there are shims, else as read. */
function Scale({ spot, preview }: { spot: Spot; preview: Preview | undefined }) {
  const judged = judgedRow(spot);
  const limit = judgingLimit(spot);
  if (!limit) return <JudgedElsewhere spot={spot} />;
  const n = spot.sheet.columns.indexOf(spot.column);
  const shown = preview ? (preview.judged ?? undefined) : judged.cells[n];
  const verdict = preview?.column?.verdict ?? shown?.verdict ?? null;
  return (
    <div>
      <LimitScale
        low={limit.low}
        high={limit.high}
        target={limit.target}
        value={shown?.value ?? null}
        perUnit={perUnit(limit.unit)}
        verdict={colourOf(verdict)}
        words={`Limits ${limit.text}, ${preview?.column?.word ?? shown?.word ?? 'not measured'}`}
      />
      <Source limit={limit} />
    </div>
  );
}

/** A figure without limits of its own goes into computed ones that have them: guide and stem into the clearance. */
function JudgedElsewhere({ spot }: { spot: Spot }) {
  const { row, column } = spot;
  if (isWords(row)) return null;
  const judged = judgedRows(spot);
  return (
    <div>
      <p className={css.source}>No limit known for {row.words} itself.</p>
      {judged.map((one) => {
        const limit = limitFor(one, column.side);
        return (
          <p key={one.key} className={css.source}>
            <b>
              {one.words} {limit?.text}
              {/* A limit in another unit carries its own mark. */}
              {limit?.unit === one.unit && ` ${one.unitMark}`}
            </b>{' '}
            {limit?.source}
          </p>
        );
      })}
    </div>
  );
}

function Source({ limit }: { limit: LimitShown }) {
  return (
    <p className={css.source}>
      <b>
        {limit.targetText && `target ${limit.targetText}`}
        {limit.targetText && limit.text && ', '}
        {limit.text}
      </b>{' '}
      {limit.source}
      {limit.notes.map((note) => `, ${note}`).join('')}
    </p>
  );
}

function Said({ preview }: { preview: Preview }) {
  const { cell, column } = preview;
  const mark = markOf(column?.verdict ?? cell?.verdict ?? null);
  // The figure itself is not judged: what shows is how the whole place stands with it.
  const whole = column && preview.sentence === '' && !isJudged(cell) ? `${column.label} so far: ` : '';
  return (
    <p className={css.sentence}>
      {preview.sentence} {mark && <Verdict mark={mark} words={`${whole}${column?.word || cell?.word || ''}`} />}
    </p>
  );
}

/** What follows from a figure is said of it: a height with its shims has no limit of its own and a judged sentence. */
const isJudged = (cell: Cell | null): boolean =>
  cell?.verdict?.name !== undefined && cell.verdict.name !== 'no limit known';

/** What is known of this place already: computed figures with their verdicts, and what to do where it fails. */
function Standing({ spot }: { spot: Spot }) {
  const { sheet, column } = spot;
  const n = sheet.columns.indexOf(column);
  const figures = sheet.rows.flatMap((row) => {
    const cell = row.cells[n];
    return row.derived && row.shown && cell && cell.text !== '' ? [{ row, cell }] : [];
  });
  const toDo = sheet.toDo.find((one) => one.spot === column.spot);
  return (
    <>
      {toDo && (
        <div className={css.toDo}>
          <b className={css.fail}>{toDo.words}</b>
          {toDo.steps.length > 0 && (
            <ol>
              {toDo.steps.map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
          )}
        </div>
      )}
      {!toDo && (
        <dl className={css.figures}>
          {figures.map(({ row, cell }) => (
            <Figure key={row.key} row={row} cell={cell} />
          ))}
        </dl>
      )}
    </>
  );
}

function Figure({ row, cell }: { row: SheetRow; cell: Cell }) {
  const mark = markOf(cell.verdict);
  return (
    <div>
      <dt>{row.words}</dt>
      <dd>
        {cell.text} {row.unitMark} {mark && <Verdict mark={mark} words={cell.word} />}
        {cell.marks.map((one) => (
          <small key={one}> {one}</small>
        ))}
      </dd>
    </div>
  );
}

/** The reading that stands, the ones before it, struck through, and the way to take it back. */
function Before({
  cell,
  onTakeBack,
  onNotHere,
}: {
  cell: Cell;
  onTakeBack: (() => void) | undefined;
  onNotHere: (() => void) | undefined;
}) {
  const { reading, earlier, decision } = cell;
  if (!reading && earlier.length === 0 && !decision && !onNotHere) return null;
  return (
    <p className={css.before}>
      {earlier.map((one) => (
        <s key={one.id}>
          {one.text || 'taken back'} {one.by}
        </s>
      ))}
      {reading && (
        <span>
          {reading.text} by {reading.by}
          {reading.tool ? `, ${reading.tool}` : ', tool not named'}
          {reading.reason && `, ${reading.reason}`}
        </span>
      )}
      {decision && (
        <b>
          {decision.accepted ? 'accepted' : 'refused'} by {decision.by}: {decision.words}
        </b>
      )}
      {onTakeBack && (
        <button type="button" className={css.takeBack} onClick={onTakeBack}>
          Take back
        </button>
      )}
      {onNotHere && (
        <button type="button" className={css.takeBack} onClick={onNotHere}>
          Nothing to measure here
        </button>
      )}
    </p>
  );
}
