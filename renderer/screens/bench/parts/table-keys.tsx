/** The keys beside the place the hand is at: the number pad, or words where words are kept. */
import { NumberPad, typeKey } from '../../../kit/bench-number-pad.tsx';
import type { ReadingEntry } from '../hooks/use-reading-entry.ts';
import type { TableHand } from '../hooks/use-table-hand.ts';
import { isWords, type Spot } from '../reading-view.ts';
import { thingOf } from '../things.ts';
import { WordKeys } from './word-keys.tsx';

export function TableKeys({
  spot,
  hand,
  entry,
  operation,
}: Readonly<{ spot: Spot; hand: TableHand; entry: ReadingEntry; operation: number | null }>) {
  const { text, setText } = hand;
  if (isWords(spot.row)) {
    return (
      <WordKeys
        spot={spot}
        operation={operation}
        text={text}
        onText={setText}
        onTake={(words) => entry.take(words, true)}
        onPrevious={entry.previous}
        onNext={entry.next}
      />
    );
  }
  const unit = otherUnitOf(text, spot.row.unitMark);
  return (
    <NumberPad
      thing={thingOf(spot.sheet).toLowerCase()}
      onKey={(key) => setText(typeKey(text, key))}
      unit={unit && { words: unit.words, onChange: () => setText(unit.text) }}
      onSame={entry.same}
      onAll={entry.all}
      undo={entry.undo}
      onPrevious={entry.previous}
      onNext={entry.next}
    />
  );
}

const OTHER: Readonly<Record<string, string>> = { in: 'mm', mm: 'in', N: 'lbf', lbf: 'N', µm: 'µin', µin: 'µm' };

/** The unit key: writes the other unit behind the figure, or takes it away again. */
function otherUnitOf(text: string, mark: string): { words: string; text: string } | undefined {
  const other = OTHER[mark];
  if (other === undefined) return undefined;
  const bare = text.replace(/\s*[a-zµ]+$/i, '');
  return bare === text ? { words: other, text: `${text} ${other}` } : { words: mark, text: bare };
}
