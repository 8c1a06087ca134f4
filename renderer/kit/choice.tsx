/** A choice of two to five: joined buttons, no drop-down. Arrow keys choose, as in any group of radio buttons. */
import { useId } from 'react';
import css from './choice.module.css';
import { classes } from './class-names.ts';

export type Option<V extends string> = Readonly<{ value: V; words: string }>;

export function Choice<V extends string>({
  label,
  options,
  value,
  onChange,
  error,
  quiet = false,
  columns,
}: {
  label: string;
  options: readonly Option<V>[];
  /** Null while nothing is chosen. */
  value: V | null;
  onChange: (value: V) => void;
  error?: string | undefined;
  quiet?: boolean;
  /** Buttons a row, for four in two rows. */
  columns?: number;
}) {
  const group = useId();
  const below = useId();
  return (
    <fieldset className={css.choice} aria-describedby={error ? below : undefined}>
      <legend className={quiet ? css.spoken : css.label}>{label}</legend>
      <div
        className={classes(css.buttons, error !== undefined && css.bad)}
        style={{ gridTemplateColumns: `repeat(${columns ?? options.length}, minmax(0, 1fr))` }}
      >
        {options.map((option) => (
          <label key={option.value} className={css.option}>
            <input
              type="radio"
              name={group}
              value={option.value}
              checked={value === option.value}
              onChange={() => onChange(option.value)}
            />
            <span>{option.words}</span>
          </label>
        ))}
      </div>
      {error && (
        <p id={below} className={css.error} role="alert">
          {error}
        </p>
      )}
    </fieldset>
  );
}

/** Yes or no beside its words. */
export function Tick({
  label,
  checked,
  onChange,
}: {
  label: React.ReactNode;
  checked: boolean;
  onChange: (checked: boolean) => void;
}) {
  return (
    <label className={css.tick}>
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      <span>{label}</span>
    </label>
  );
}
