/** A field holds text, exactly as typed; it is read by a parser of core, never by Number(). */
import { type KeyboardEvent, type Ref, useId } from 'react';
import { classes } from './class-names.ts';
import css from './field.module.css';

export type FieldProps = Readonly<{
  label: string;
  value: string;
  onChange: (text: string) => void;
  /** What is wrong, in words; shown below, and what was typed stays. */
  error?: string | undefined;
  /** A fact under the field, for example how the text was read: `= 0.3438 in`. */
  hint?: React.ReactNode;
  /** Unit or key at the end inside. */
  end?: React.ReactNode;
  placeholder?: string;
  type?: 'text' | 'password' | 'tel' | 'email' | 'date' | 'time';
  inputMode?: 'text' | 'decimal' | 'numeric' | 'tel';
  /** More than one line. */
  lines?: number;
  required?: boolean;
  autoFocus?: boolean;
  autoComplete?: string;
  maxLength?: number;
  /** Keep the label for screen readers only. */
  quiet?: boolean;
  onKeyDown?: (event: KeyboardEvent<HTMLInputElement | HTMLTextAreaElement>) => void;
  onBlur?: () => void;
  inputRef?: Ref<HTMLInputElement & HTMLTextAreaElement>;
  name?: string;
}>;

export function Field(props: FieldProps) {
  const { label, value, onChange, error, hint, end, lines, quiet = false } = props;
  const field = useId();
  const below = useId();
  const shared = {
    id: field,
    value,
    name: props.name,
    ref: props.inputRef,
    placeholder: props.placeholder,
    required: props.required,
    'aria-invalid': error !== undefined,
    'aria-describedby': error || hint ? below : undefined,
    autoComplete: props.autoComplete ?? 'off',
    maxLength: props.maxLength,
    onKeyDown: props.onKeyDown,
    onBlur: props.onBlur,
    spellCheck: false,
    autoFocus: props.autoFocus,
  } as const;
  return (
    <div className={css.field}>
      <label htmlFor={field} className={quiet ? css.spoken : css.label}>
        {label}
      </label>
      <div className={classes(css.box, error !== undefined && css.bad)}>
        {lines ? (
          <textarea {...shared} className={css.input} rows={lines} onChange={(event) => onChange(event.target.value)} />
        ) : (
          <input
            {...shared}
            className={css.input}
            type={props.type ?? 'text'}
            inputMode={props.inputMode}
            onChange={(event) => onChange(event.target.value)}
          />
        )}
        {end && <span className={css.end}>{end}</span>}
      </div>
      {(error || hint) && (
        <p id={below} className={error ? css.error : css.hint} role={error ? 'alert' : undefined}>
          {error ?? hint}
        </p>
      )}
    </div>
  );
}
