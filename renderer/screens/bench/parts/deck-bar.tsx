/** The head of the survey's sheet: what is read, before or after work, and which view. */
import type { Stage } from '#core/catalogue/compute/bench-table.ts';
import { Button } from '../../../kit/button.tsx';
import { classes } from '../../../kit/class-names.ts';
import type { DeckPart } from '../deck-view.ts';
import type { DeckChoice } from '../hooks/use-deck-survey.ts';
import css from './deck-bar.module.css';

const PARTS: readonly Readonly<{ value: DeckPart; words: string }>[] = [
  { value: 'edge', words: 'Straightedge' },
  { value: 'grid', words: 'Dial grid' },
  { value: 'sizes', words: 'Sizes' },
];
const STAGES: readonly Readonly<{ value: Stage; words: string }>[] = [
  { value: 'before', words: 'Before' },
  { value: 'after', words: 'After work' },
];

export function DeckBar({
  choice,
  words,
  relief,
  onRelief,
  gauge,
  onGauge,
  typing,
  onTyping,
}: {
  choice: DeckChoice;
  /** `12 of 15 points, dial 4` */
  words: string;
  relief: boolean;
  onRelief: () => void;
  /** The gauge panel is open; null where there is nothing to type. */
  gauge: boolean | null;
  onGauge: () => void;
  typing: boolean;
  /** Undefined where nothing may be typed. */
  onTyping: (() => void) | undefined;
}) {
  return (
    <div className={css.bar}>
      <Group label="What is read" options={PARTS} value={choice.part} onChange={choice.setPart} />
      {choice.part !== 'sizes' && (
        <Group label="Before or after work" options={STAGES} value={choice.stage} onChange={choice.setStage} />
      )}
      <small className={css.words}>{words}</small>
      <span className={css.end}>
        {choice.part === 'grid' && (
          <Button pressed={relief} onPress={onRelief}>
            Relief
          </Button>
        )}
        {gauge !== null && (
          <Button pressed={gauge} onPress={onGauge}>
            Gauge, limit
          </Button>
        )}
        {onTyping && <Button onPress={onTyping}>{typing ? 'Result' : 'Type readings'}</Button>}
      </span>
    </div>
  );
}

function Group<V extends string>({
  label,
  options,
  value,
  onChange,
}: {
  label: string;
  options: readonly Readonly<{ value: V; words: string }>[];
  value: V;
  onChange: (value: V) => void;
}) {
  return (
    <fieldset className={css.group} aria-label={label}>
      {options.map((option) => (
        <button
          key={option.value}
          type="button"
          aria-pressed={option.value === value}
          className={classes(option.value === value && css.on)}
          onClick={() => onChange(option.value)}
        >
          {option.words}
        </button>
      ))}
    </fieldset>
  );
}
