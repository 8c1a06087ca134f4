/** Ruled rows of two lines at most. Up, Down, Home and End move, Enter opens; the row one stands on is dye-washed. */
import type { KeyboardEvent } from 'react';
import { classes } from './class-names.ts';
import css from './rows.module.css';

/** Lists that Up and Down walk through as one. */
export function RowGroup({ children }: { children: React.ReactNode }) {
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it hands keys on from list to list, each of which has its role.
    <div className={css.group} onKeyDown={moveInRows} role="presentation">
      {children}
    </div>
  );
}

/** A list of `Row`s. */
export function Rows({ label, children }: { label: string; children: React.ReactNode }) {
  return (
    <ul className={css.rows} aria-label={label} onKeyDown={moveInRows}>
      {children}
    </ul>
  );
}

export type RowProps = Readonly<{
  /** At the start, usually a `Tag`. */
  lead?: React.ReactNode;
  title: React.ReactNode;
  note?: React.ReactNode;
  /** At the end: time, amount or hold. */
  end?: React.ReactNode;
  endNote?: React.ReactNode;
  /** Where Enter or a press leads. Without it and without `onOpen` the row is only read. */
  href?: string | undefined;
  onOpen?: (() => void) | undefined;
  selected?: boolean | undefined;
}>;

export function Row({ lead, title, note, end, endNote, href, onOpen, selected }: RowProps) {
  const inside = (
    <>
      {lead}
      <span className={css.words}>
        <span className={css.title}>{title}</span>
        {note && <small>{note}</small>}
      </span>
      {(end || endNote) && (
        <span className={css.end}>
          {end}
          {endNote && <small>{endNote}</small>}
        </span>
      )}
    </>
  );
  const name = classes(css.row, selected && css.selected);
  return (
    <li>
      {href !== undefined && (
        <a className={name} data-row="" href={href} aria-current={selected ? 'true' : undefined}>
          {inside}
        </a>
      )}
      {href === undefined && onOpen && (
        <button type="button" className={name} data-row="" onClick={onOpen} aria-pressed={selected}>
          {inside}
        </button>
      )}
      {href === undefined && !onOpen && <div className={name}>{inside}</div>}
    </li>
  );
}

/** Moves the focus among the `[data-row]` elements inside the element that got the key. */
export function moveInRows(event: KeyboardEvent<HTMLElement>): void {
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const rows = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-row]')];
  const focused = document.activeElement;
  const at = focused instanceof HTMLElement ? rows.indexOf(focused) : -1;
  const next = nextRow(event.key, at, rows.length);
  // At its end a list leaves the key to the page around it, which moves on to the next list.
  if (next === null || next === at) return;
  event.preventDefault();
  event.stopPropagation();
  rows[next]?.focus();
}

/** The row a key leads to, or null when the key does not move. `at` -1: none is focused. */
export function nextRow(key: string, at: number, count: number): number | null {
  if (count === 0) return null;
  if (key === 'ArrowDown') return Math.min(at + 1, count - 1);
  if (key === 'ArrowUp') return Math.max(at - 1, 0);
  if (at < 0) return null;
  if (key === 'Home') return 0;
  return key === 'End' ? count - 1 : null;
}
