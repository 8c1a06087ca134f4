/** Where under the straightedge the thickest feeler went: one touch, kept like every reading. */
import { newKey } from '../../../client/client.ts';
import { useClient } from '../../../client/use-app.ts';
import { useOutbox, useOutboxState } from '../../../client/use-outbox.ts';
import { Button } from '../../../kit/button.tsx';
import { ONCE } from '../deck-view.ts';
import { entriesAt, entryFor } from '../reading-parcel.ts';
import { placeOf, type Spot, spotAt } from '../reading-view.ts';
import css from './deck-where.module.css';

export function DeckWhere({
  spot,
  placeQuantity,
  operation,
}: {
  /** The gap of the line. */
  spot: Spot;
  placeQuantity: string;
  operation: number | null;
}) {
  const client = useClient();
  const outbox = useOutbox();
  const { entries } = useOutboxState();
  const { sheet, row } = spot;
  const mate = sheet.rows.find((one) => one.quantity === placeQuantity && one.point === row.point);
  const where = mate && spotAt(sheet, mate.key, ONCE);
  if (!where) return null;
  const { waiting } = entriesAt(entries, placeOf(sheet.casting.id, where.row, ONCE));
  const standing = waiting?.shown ?? where.cell?.text ?? '';

  function keep(text: string) {
    if (!where) return;
    const typing = { text, tool: null, readOn: null, operation, takenAt: client.now() };
    const entry = entryFor(where, typing, waiting, newKey());
    if (entry) void outbox.add(entry);
  }
  return (
    <fieldset className={css.where} aria-label="Where it went under">
      {where.row.choices.map((choice) => (
        <Button key={choice} pressed={choice === standing} onPress={() => keep(choice)}>
          {choice}
        </Button>
      ))}
    </fieldset>
  );
}
