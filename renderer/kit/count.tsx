/** Counting pieces: minus, number, plus; the number may be typed. A count short of what is expected is painted. */

import { classes } from './class-names.ts';
import css from './count.module.css';

export function Count({
  label,
  note,
  value,
  onChange,
  of,
  max = 999,
}: {
  label: string;
  note?: React.ReactNode;
  /** Null while not counted. */
  value: number | null;
  onChange: (value: number | null) => void;
  /** What the type says should come. */
  of?: number | null | undefined;
  max?: number;
}) {
  const short = value !== null && of !== null && of !== undefined && value < of;
  const step = (by: number) => onChange(Math.min(max, Math.max(0, (value ?? (by > 0 ? 0 : (of ?? 0))) + by)));
  return (
    <div className={css.count}>
      <span className={css.label}>
        {label}
        {note && <small>{note}</small>}
      </span>
      <button
        type="button"
        className={css.step}
        aria-label={`One fewer: ${label}`}
        onClick={() => step(-1)}
        tabIndex={-1}
      >
        −
      </button>
      <input
        className={classes(css.number, short && css.short)}
        aria-label={of === null || of === undefined ? label : `${label}, of ${of}`}
        inputMode="numeric"
        autoComplete="off"
        value={value === null ? '' : String(value)}
        onFocus={(event) => event.target.select()}
        onChange={(event) => onChange(readCount(event.target.value, max))}
      />
      <button
        type="button"
        className={css.step}
        aria-label={`One more: ${label}`}
        onClick={() => step(1)}
        tabIndex={-1}
      >
        +
      </button>
      <span className={css.of}>{of === null || of === undefined ? '' : `of ${of}`}</span>
    </div>
  );
}

/** Digits as a count, at most `max`; empty or anything else is not counted. */
export function readCount(text: string, max: number): number | null {
  const digits = text.replace(/\D/g, '');
  return digits === '' ? null : Math.min(max, Number.parseInt(digits, 10));
}
