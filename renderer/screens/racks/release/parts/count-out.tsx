/** Count out, with the customer watching: every casting, bag and box with a number of its own. */
import { type KeyboardEvent, useRef } from 'react';
import { classes } from '../../../../kit/class-names.ts';
import { readCount } from '../../../../kit/count.tsx';
import { Field } from '../../../../kit/field.tsx';
import { Tag } from '../../../../kit/tag.tsx';
import {
  type Change,
  type Outcome,
  openItems,
  outcomeOf,
  type ReleasePage,
  type ReleaseRow,
  type ReleaseTyped,
  rowKey,
} from '../release-typed.ts';
import css from './count-out.module.css';
import { PieceEnds } from './piece-ends.tsx';

const metalOf = (row: ReleaseRow) => (row.containerId === null ? (row.metal?.class ?? 'not_known') : undefined);

export function CountOut({
  page,
  typed,
  change,
  errors,
}: {
  page: ReleasePage;
  typed: ReleaseTyped;
  change: Change;
  /** Sentences by `rowKey`. */
  errors: Readonly<Record<string, string>>;
}) {
  const list = useRef<HTMLOListElement>(null);
  /** Enter on a line not counted: all of it is out; then the next line. */
  const next = (event: KeyboardEvent<HTMLInputElement>, row: ReleaseRow) => {
    if (event.key !== 'Enter' || event.ctrlKey) return;
    event.preventDefault();
    if ((typed.out[rowKey(row)] ?? null) === null) set(row, row.piecesIn);
    const all = [...(list.current?.querySelectorAll<HTMLInputElement>('[data-count]') ?? [])];
    all[all.indexOf(event.currentTarget) + 1]?.focus();
  };
  const set = (row: ReleaseRow, value: number | null) =>
    change({ out: { ...typed.out, [rowKey(row)]: value === null ? null : Math.min(value, row.piecesIn) } });
  return (
    <ol className={css.rows} ref={list} aria-label="Count out">
      <li className={css.head} aria-hidden="true">
        <span />
        <span>From the rack</span>
        <span>In</span>
        <span>Out</span>
        <span />
      </li>
      {page.rows.map((row) => (
        <Line
          key={rowKey(row)}
          row={row}
          page={page}
          typed={typed}
          change={change}
          error={errors[rowKey(row)]}
          set={(value) => set(row, value)}
          onKey={(event) => next(event, row)}
        />
      ))}
    </ol>
  );
}

type LineProps = Readonly<{
  row: ReleaseRow;
  page: ReleasePage;
  typed: ReleaseTyped;
  change: Change;
  error: string | undefined;
  set: (value: number | null) => void;
  onKey: (event: KeyboardEvent<HTMLInputElement>) => void;
}>;

function Line({ row, page, typed, change, error, set, onKey }: LineProps) {
  const key = rowKey(row);
  const counted = typed.out[key] ?? null;
  const outcome = outcomeOf(row, typed, page.rows);
  const items = openItems(row);
  return (
    <li className={classes(css.line, (outcome.wantsWhy || error) && css.short)}>
      <div className={css.grid}>
        <span>
          <Tag number={row.label} metal={metalOf(row)} size="m" />
        </span>
        <WhatItIs row={row} />
        <span className={css.figure}>{row.piecesIn}</span>
        {row.out ? <span /> : <Steps row={row} counted={counted} set={set} onKey={onKey} />}
        <span className={classes(css.outcome, css[outcome.kind])}>{outcome.words}</span>
      </div>
      {error && (
        <p className={css.error} role="alert">
          {error}
        </p>
      )}
      {wantsReason(row, outcome) && (
        <div className={css.why}>
          <Field
            label={`${row.label}: stays, with reason${row.place ? ` (look in ${row.place} first)` : ''}`}
            value={typed.why[key] ?? ''}
            onChange={(text) => change({ why: { ...typed.why, [key]: text } })}
          />
        </div>
      )}
      {counted !== null && counted > 0 && items.length > 0 && (
        <PieceEnds row={row} items={items} typed={typed} change={change} />
      )}
    </li>
  );
}

/** A line that is short, or a bag that stays, may have a reason written beside it. */
const wantsReason = (row: ReleaseRow, outcome: Outcome): boolean =>
  outcome.kind === 'short' || (outcome.kind === 'stays' && row.containerId !== null);

function WhatItIs({ row }: { row: ReleaseRow }) {
  const more = [
    row.place ? `rack ${row.place}` : 'never put away',
    row.containerId !== null && row.title,
    row.sealed && 'sealed',
    row.castingWord,
  ];
  return (
    <span>
      <b>{row.containerId === null ? row.title : (row.contents ?? row.title)}</b>
      <small>{more.filter(Boolean).join(', ')}</small>
    </span>
  );
}

function Steps({ row, counted, set, onKey }: Pick<LineProps, 'row' | 'set' | 'onKey'> & { counted: number | null }) {
  return (
    <span className={css.steps}>
      <button
        type="button"
        tabIndex={-1}
        aria-label={`One fewer out: ${row.label}`}
        onClick={() => set(Math.max(0, (counted ?? 1) - 1))}
      >
        −
      </button>
      <input
        data-count=""
        inputMode="numeric"
        autoComplete="off"
        aria-label={`${row.label} counted out, of ${row.piecesIn}`}
        value={counted === null ? '' : String(counted)}
        onFocus={(event) => event.target.select()}
        onChange={(event) => set(readCount(event.target.value, row.piecesIn))}
        onKeyDown={onKey}
      />
      <button
        type="button"
        tabIndex={-1}
        aria-label={`One more out: ${row.label}`}
        onClick={() => set(Math.min(row.piecesIn, (counted ?? 0) + 1))}
      >
        +
      </button>
    </span>
  );
}
