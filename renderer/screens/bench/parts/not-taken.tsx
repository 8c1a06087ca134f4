/** Figures of this table that the host did not take, each with the way to its place. */
import type { Entry } from '../../../client/outbox.ts';
import { Button } from '../../../kit/button.tsx';
import { Notice } from '../../../kit/notice.tsx';
import { placeParts, type Spot, spotAt } from '../reading-view.ts';

export function NotTaken({
  spot,
  entries,
  onGo,
}: {
  /** Where the hand is; its own question is asked there. */
  spot: Spot;
  entries: readonly Entry[];
  onGo: (column: string, row: string) => void;
}) {
  const elsewhere = entries.flatMap((entry) => {
    const { casting, row, column } = placeParts(entry.place);
    const at = entry.refused && casting === spot.sheet.casting.id ? spotAt(spot.sheet, row, column) : null;
    const here = at?.column.label === spot.column.label && at.row.key === spot.row.key;
    return at && !here
      ? [
          {
            key: entry.key,
            row,
            column,
            words: `${at.column.label || (at.row.pointWords ?? at.row.words)} ${entry.shown}`,
          },
        ]
      : [];
  });
  if (elsewhere.length === 0) return null;
  return (
    <Notice
      kind="wrong"
      acts={elsewhere.slice(0, MOST).map((one) => (
        <Button key={one.key} onPress={() => onGo(one.column, one.row)}>
          {one.words}
        </Button>
      ))}
    >
      Not taken yet, a question is open.
    </Notice>
  );
}

/** As many buttons as fit in one line. */
const MOST = 4;
