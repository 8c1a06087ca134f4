/** The one field a figure is typed into: by pad, keyboard, code reader or a gauge that types like a keyboard. */
import { type KeyboardEvent, useEffect, useRef } from 'react';
import css from './reading-field.module.css';

export type ReadingFieldProps = Readonly<{
  /** `4E1, installed height`. */
  label: string;
  text: string;
  /** What stands in the cell already, shown while nothing is typed. */
  standing: string;
  unit: string;
  shut: boolean;
  onText: (text: string) => void;
  onNext: () => void;
  onPrevious: () => void;
  /** Up and down in the rows of the table. */
  onRow: (by: 1 | -1) => void;
  /** The plus and the times key of a keypad; left out, they are typed like any other. */
  onPlus?: (() => void) | undefined;
  onTimes?: (() => void) | undefined;
}>;

/** Characters a reading keeps. */
const LONGEST = 20;

export function ReadingField(props: ReadingFieldProps) {
  const { label, text, standing, unit, shut, onText } = props;
  const field = useRef<HTMLInputElement>(null);
  useHomeOfKeys(field, label);

  function onKey(event: KeyboardEvent<HTMLInputElement>) {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const act = ACTS[event.key]?.(props);
    if (!act || (text !== '' && (event.key === 'ArrowLeft' || event.key === 'ArrowRight'))) return;
    event.preventDefault();
    act();
  }

  return (
    <div className={css.field}>
      <input
        ref={field}
        aria-label={label}
        className={css.input}
        // The pad is on the page; the tablet's own keyboard would cover it.
        inputMode="none"
        autoComplete="off"
        spellCheck={false}
        maxLength={LONGEST}
        readOnly={shut}
        value={text}
        placeholder={standing}
        onChange={(event) => onText(event.target.value)}
        onKeyDown={onKey}
      />
      <span className={css.unit}>{unit}</span>
    </div>
  );
}

const ACTS: Readonly<Record<string, (props: ReadingFieldProps) => (() => void) | undefined>> = {
  Enter: (props) => props.onNext,
  ArrowRight: (props) => props.onNext,
  ArrowLeft: (props) => props.onPrevious,
  ArrowDown: (props) => () => props.onRow(1),
  ArrowUp: (props) => () => props.onRow(-1),
  '+': (props) => props.onPlus,
  '*': (props) => props.onTimes,
};

/** A key that types goes into the field wherever the hand was, unless another field has it. */
function useHomeOfKeys(field: React.RefObject<HTMLInputElement | null>, place: string): void {
  // Another place was touched: Enter and the arrows of a keypad go on from there.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another place brings the keys home.
  useEffect(() => field.current?.focus(), [field, place]);
  useEffect(() => {
    const home = (event: globalThis.KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.key.length !== 1) return;
      const at = document.activeElement;
      const elsewhere = at instanceof HTMLInputElement || at instanceof HTMLTextAreaElement;
      if (!elsewhere && /[\d.,/*+-]/.test(event.key)) field.current?.focus();
    };
    window.addEventListener('keydown', home);
    return () => window.removeEventListener('keydown', home);
  }, [field]);
}
