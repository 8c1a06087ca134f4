/** More work on a casting: priced when it is added, covered when the customer or the ceiling says so. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { Button } from '../../../../kit/button.tsx';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { isHourly, quantityFault, readQuantity } from '../../parts/quantity.ts';
import { type Picked, WishField } from '../../parts/wish-field.tsx';
import type { PanelProps, TicketCasting } from '../ticket-shapes.ts';

export function AddWorkPanel({
  ticket,
  casting,
  onDone,
}: PanelProps & Readonly<{ casting: TicketCasting | undefined }>) {
  const operations = useAppCommand('pricing/add-operations');
  const packages = useAppCommand('pricing/add-package-line');
  const [picked, setPicked] = useState<Picked | null>(null);
  const [quantity, setQuantity] = useState('');
  const [note, setNote] = useState('');
  const words = wordsOf(picked);
  const hourly = picked !== null && 'operation' in picked && isHourly(picked.operation, casting?.kind);
  const add = async () => {
    if (!picked || !casting || 'said' in picked || 'part' in picked) return;
    const done =
      'operation' in picked
        ? await operations.send({
            ticketId: ticket.ticketId,
            castingId: casting.castingId,
            operations: [
              {
                operationKindId: picked.operation.id,
                quantity: readQuantity(quantity, hourly),
                countNote: note.trim() || null,
              },
            ],
          })
        : await packages.send({
            ticketId: ticket.ticketId,
            packageId: picked.package.id,
            castings: [casting.castingId],
          });
    if (done) onDone();
  };
  return (
    <FormSheet
      title="Add work"
      note={casting ? `on ${casting.tagNo}, ${casting.title}` : undefined}
      act={words === '' ? 'Add it' : `Add ${words}`}
      command={operations}
      shut={missingOf(picked, casting)}
      onDone={onDone}
      onGo={() => void add()}
    >
      <WishField
        casting={casting && { kind: casting.kind, material: casting.material, typeId: casting.typeId }}
        onPick={setPicked}
      />
      {picked && (
        <p>
          <b>{words}</b> <Button onPress={() => setPicked(null)}>Another one</Button>
        </p>
      )}
      {picked && 'operation' in picked && (
        <>
          <Field
            label={hourly ? 'Hours' : 'How many (empty: as the casting has)'}
            error={quantityFault(quantity, hourly)}
            value={quantity}
            onChange={setQuantity}
          />
          <Field label="Note" value={note} onChange={setNote} placeholder="only the exhausts" />
        </>
      )}
      <ErrorNote error={packages.error} />
    </FormSheet>
  );
}

function wordsOf(picked: Picked | null): string {
  if (picked === null) return '';
  if ('said' in picked) return picked.said;
  if ('part' in picked) return picked.part.words;
  return 'operation' in picked ? picked.operation.shopWords : picked.package.shopWords;
}

/** Why nothing can be added yet, or undefined. */
function missingOf(picked: Picked | null, casting: TicketCasting | undefined): string | undefined {
  if (!casting) return 'No casting is here.';
  if (picked === null) return 'Choose the work.';
  return 'said' in picked ? 'Choose an operation or a package of the catalogue.' : undefined;
}
