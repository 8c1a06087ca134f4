/** The pad of a reading: digits as on a calculator, unit, minus, and at the right what moves through the readings. */
import css from './bench-number-pad.module.css';
import { classes } from './class-names.ts';

/** What a key of the pad types into the reading. */
export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | '-' | 'back';

export type NumberPadProps = Readonly<{
  onKey: (key: PadKey) => void;
  /** The unit a press changes to, and the press. Left out where the quantity has one unit. */
  unit?: Readonly<{ words: string; onChange: () => void }> | undefined;
  /** Takes the reading before this one. Undefined: there is none. */
  onSame?: (() => void) | undefined;
  /** Same for all things not yet read. */
  onAll?: (() => void) | undefined;
  /** What undo would undo, and the press. */
  undo?: Readonly<{ words: string; onPress: () => void }> | undefined;
  onPrevious: () => void;
  onNext: () => void;
  /** What the things across are called: `valve`. */
  thing: string;
  nextWords?: string;
}>;

const DIGITS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const;

export function NumberPad(props: NumberPadProps) {
  const { onKey, unit, undo, onSame, onAll } = props;
  return (
    <fieldset className={css.pad} aria-label="Number pad">
      {DIGITS.map((digit) => (
        <Key key={digit} area={`n${digit}`} onPress={() => onKey(digit)}>
          {digit}
        </Key>
      ))}
      <Key area="n0" onPress={() => onKey('0')}>
        0
      </Key>
      <Key area="point" label="decimal point" onPress={() => onKey('.')}>
        .
      </Key>
      <Key area="back" label="take back the last digit" onPress={() => onKey('back')}>
        <svg viewBox="0 0 48 28" className={css.back} aria-hidden="true">
          <path d="M15 2h31v24H15L2 14z M22 8l14 12M36 8L22 20" />
        </svg>
      </Key>
      <Key area="minus" label="minus" onPress={() => onKey('-')}>
        −
      </Key>
      <Key
        area="unit"
        small
        shut={!unit}
        label={unit ? `type in ${unit.words}` : 'one unit only'}
        onPress={unit?.onChange}
      >
        {unit?.words ?? '-'}
      </Key>
      <Key area="same" small shut={!onSame} onPress={onSame}>
        Same as last
      </Key>
      <Key area="all" small shut={!onAll} onPress={onAll}>
        Same for all
      </Key>
      <Key area="undo" small shut={!undo} onPress={undo?.onPress}>
        Undo {undo?.words}
      </Key>
      <Key area="prev" small label={`${props.thing} before`} onPress={props.onPrevious}>
        <svg viewBox="0 0 30 16" className={css.arrow} aria-hidden="true">
          <path d="M30 8H4M11 1L3 8l8 7" />
        </svg>
        {props.thing}
      </Key>
      <Key area="next" go onPress={props.onNext}>
        {props.nextWords ?? 'Next'}
      </Key>
    </fieldset>
  );
}

function Key({
  area,
  children,
  onPress,
  label,
  small = false,
  go = false,
  shut = false,
}: {
  area: string;
  children: React.ReactNode;
  onPress?: (() => void) | undefined;
  label?: string;
  small?: boolean;
  go?: boolean;
  shut?: boolean;
}) {
  return (
    <button
      type="button"
      className={classes(css.key, small && css.small, go && css.go, shut && css.shut)}
      style={{ gridArea: area }}
      aria-label={label}
      aria-disabled={shut}
      // The pad types where the hand already is: the focus stays in the table.
      onPointerDown={(event) => event.preventDefault()}
      onClick={shut ? undefined : onPress}
    >
      {children}
    </button>
  );
}

/** Text after a key, at most 20 characters: one point, minus first, backspace takes the last. */
export function typeKey(text: string, key: PadKey): string {
  if (key === 'back') return text.slice(0, -1);
  if (key === '-') return text.startsWith('-') ? text.slice(1) : `-${text}`.slice(0, 20);
  if (key === '.' && text.includes('.')) return text;
  return `${text}${key}`.slice(0, 20);
}
