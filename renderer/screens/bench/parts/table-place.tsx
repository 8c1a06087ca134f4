/** The place the hand is at, with the field that is typed into. */
import type { ReadingEntry } from '../hooks/use-reading-entry.ts';
import type { TableHand } from '../hooks/use-table-hand.ts';
import { type At, isWords, type Spot } from '../reading-view.ts';
import { thingOf } from '../things.ts';
import { ReadingDetail } from './reading-detail.tsx';
import { ReadingField } from './reading-field.tsx';

export function TablePlace({
  spot,
  at,
  order,
  hand,
  entry,
  onRow,
}: Readonly<{
  spot: Spot;
  at: At;
  order: readonly string[];
  hand: TableHand;
  entry: ReadingEntry;
  /** Up and down in the typed rows. */
  onRow: (by: 1 | -1) => void;
}>) {
  const { sheet, row, column, cell } = spot;
  const { text } = hand;
  const nth = order.indexOf(at.column) + 1;
  return (
    <ReadingDetail
      entry={entry}
      spot={spot}
      position={order.length > 1 ? `${thingOf(sheet).toLowerCase()} ${nth} of ${order.length}` : ''}
      field={
        <ReadingField
          label={`${column.label}, ${row.words}`}
          text={text}
          standing={cell?.text || (row.quantity === 'shims-fitted' ? (column.shims?.text ?? '') : '')}
          unit={/[a-z]/i.test(text) ? '' : row.unitMark}
          shut={sheet.locked}
          onText={hand.setText}
          onNext={entry.next}
          onPrevious={entry.previous}
          onRow={onRow}
          // Shims are written with a plus: 0.5+1.0.
          onPlus={isWords(row) && text !== '' ? undefined : entry.plus}
          onTimes={entry.times}
        />
      }
    />
  );
}
