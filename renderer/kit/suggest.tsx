/** A field that finds while one types: Up and Down choose, Enter takes, Esc leaves the words as typed. */
import { type KeyboardEvent, useId, useState } from 'react';
import { classes } from './class-names.ts';
import fieldCss from './field.module.css';
import { Keys } from './key-hints.tsx';
import css from './suggest.module.css';

export type Suggestion<T> = Readonly<{ key: string | number; words: string; note?: string | undefined; value: T }>;

export function Suggest<T>({
  label,
  text,
  onText,
  options,
  onPick,
  error,
  hint,
  placeholder,
  pickWords = 'takes',
  quiet = false,
  autoFocus = false,
  onBlur,
}: {
  label: string;
  text: string;
  onText: (text: string) => void;
  /** Best first; may be empty. */
  options: readonly Suggestion<T>[];
  onPick: (value: T, words: string) => void;
  error?: string | undefined;
  hint?: React.ReactNode;
  placeholder?: string;
  /** Verb before the first option's name: `Enter adds Pressure test`. */
  pickWords?: string;
  quiet?: boolean;
  autoFocus?: boolean;
  onBlur?: () => void;
}) {
  const field = useId();
  const list = useId();
  const below = useId();
  const [at, setAt] = useState(0);
  const [open, setOpen] = useState(false);
  const shown = open && text !== '' && options.length > 0;
  const active = shown ? options[Math.min(at, options.length - 1)] : undefined;

  const pick = (option: Suggestion<T>) => {
    onPick(option.value, option.words);
    setOpen(false);
    setAt(0);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      setOpen(true);
      setAt((before) => step(before, event.key === 'ArrowDown' ? 1 : -1, options.length));
    } else if (event.key === 'Enter' && active) {
      event.preventDefault();
      pick(active);
    } else if (event.key === 'Escape' && shown) {
      event.stopPropagation();
      setOpen(false);
    }
  };
  return (
    <div className={classes(fieldCss.field, css.suggest)}>
      <label htmlFor={field} className={quiet ? fieldCss.spoken : fieldCss.label}>
        {label}
      </label>
      <div className={classes(fieldCss.box, error !== undefined && fieldCss.bad)}>
        <input
          id={field}
          className={fieldCss.input}
          role="combobox"
          aria-expanded={shown}
          aria-controls={shown ? list : undefined}
          aria-activedescendant={active ? `${list}-${active.key}` : undefined}
          aria-autocomplete="list"
          aria-invalid={error !== undefined}
          aria-describedby={error || hint ? below : undefined}
          autoComplete="off"
          spellCheck={false}
          // biome-ignore lint/a11y/noAutofocus: a page of the desk starts where the hand types first.
          autoFocus={autoFocus}
          placeholder={placeholder}
          value={text}
          onChange={(event) => {
            onText(event.target.value);
            setOpen(true);
            setAt(0);
          }}
          onFocus={() => setOpen(true)}
          onBlur={() => {
            setOpen(false);
            onBlur?.();
          }}
          onKeyDown={onKeyDown}
        />
        {active && (
          <span className={classes(fieldCss.end, css.takes)}>
            <Keys keys="Enter" /> {pickWords} {active.words}
          </span>
        )}
      </div>
      {shown && (
        <div role="listbox" id={list} aria-label={`Choices for ${label}`} className={css.list}>
          {options.map((option) => (
            <div
              key={option.key}
              id={`${list}-${option.key}`}
              role="option"
              tabIndex={-1}
              aria-selected={option === active}
              className={css.option}
              onMouseDown={(event) => {
                // Before the field loses the focus and the list with it.
                event.preventDefault();
                pick(option);
              }}
            >
              <span>{option.words}</span>
              {option.note && <small>{option.note}</small>}
            </div>
          ))}
        </div>
      )}
      {(error || hint) && (
        <p id={below} className={error ? fieldCss.error : fieldCss.hint} role={error ? 'alert' : undefined}>
          {error ?? hint}
        </p>
      )}
    </div>
  );
}

const step = (at: number, by: number, count: number): number =>
  count === 0 ? 0 : Math.min(count - 1, Math.max(0, at + by));
