/** Pictures of the ticket: seen, and more added to the casting chosen. None is ever deleted. */
import { useId, useState } from 'react';
import { RequestRefused } from '../../../../client/request-refused.ts';
import { fileUrl, putFile } from '../../../../client/transport.ts';
import { useAppCommand, useAppQuery } from '../../../../client/use-app.ts';
import { useMay } from '../../../../client/use-me.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Button } from '../../../../kit/button.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { Empty, Sheet, SheetBody, SheetFoot } from '../../../../kit/sheet.tsx';
import type { PanelProps, TicketCasting } from '../ticket-shapes.ts';
import css from './photos-panel.module.css';

export function PhotosPanel({
  ticket,
  casting,
  onDone,
}: PanelProps & Readonly<{ casting: TicketCasting | undefined }>) {
  const field = useId();
  const may = useMay();
  const format = useFormat();
  const add = useAppCommand('photos/add-photo');
  const { data, error } = useAppQuery('photos/list-photos', { ticketId: ticket.ticketId }, { ticket: ticket.ticketId });
  const [refused, setRefused] = useState<RequestRefused | null>(null);
  const take = async (files: readonly File[]) => {
    setRefused(null);
    try {
      for (const file of files) {
        const { sha256 } = await putFile(file);
        await add.send({
          ticketId: ticket.ticketId,
          castingId: casting?.castingId ?? null,
          stage: ticket.conditionsLocked ? 'done' : 'arrival',
          caption: file.name.slice(0, 240),
          file: { sha256 },
        });
      }
    } catch (thrown) {
      if (!(thrown instanceof RequestRefused)) throw thrown;
      setRefused(thrown);
    }
  };
  return (
    <Sheet title="Photos" note={casting ? `more go to ${casting.tagNo}` : undefined} scroll>
      <SheetBody>
        {data?.photos.length === 0 && <Empty>No picture is kept yet.</Empty>}
        {data?.photos.map((photo) => (
          <figure key={photo.photoId} className={css.photo}>
            <a href={fileUrl(photo.sha256)} target="_blank" rel="noreferrer">
              <img src={fileUrl(photo.sha256)} alt={photo.caption ?? photo.stageWords} />
            </a>
            <figcaption>
              {photo.tagNo} {photo.stageWords}
              {photo.caption && `, ${photo.caption}`}. {photo.by}, {format.at(photo.keptAt)}
            </figcaption>
          </figure>
        ))}
        <ErrorNote error={error ?? refused ?? add.error} />
      </SheetBody>
      <SheetFoot>
        {may.has('floor:work') && (
          <label htmlFor={field} className={css.add}>
            {add.pending ? 'Keeping...' : 'Add pictures'}
            <input
              id={field}
              type="file"
              accept="image/jpeg,image/png,image/webp"
              multiple
              onChange={(event) => {
                void take([...(event.target.files ?? [])]);
                event.target.value = '';
              }}
            />
          </label>
        )}
        <Button onPress={onDone}>Close</Button>
      </SheetFoot>
    </Sheet>
  );
}
