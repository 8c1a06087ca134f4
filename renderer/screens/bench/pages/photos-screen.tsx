/** How the casting arrived: pictures, what came with it, what was seen. */
import { fileUrl } from '../../../client/transport.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetHead } from '../../../kit/sheet.tsx';
import { BandAct, BandTitle } from '../../../kit/slots.tsx';
import type { BenchCasting } from '../bench-casting.ts';
import { KeptHere } from '../parts/kept-here.tsx';
import { PhotoTaker } from '../parts/photo-taker.tsx';
import css from './photos-screen.module.css';

export function PhotosScreen({ tag }: { tag: number }) {
  const { data, error } = useAppQuery('floor/get-bench', { tag });
  return (
    <>
      <BandTitle>How {tag} arrived</BandTitle>
      <BandAct>
        <Button href={benchAddress(tag)}>Back to casting</Button>
      </BandAct>
      <KeptHere />
      <ErrorNote error={error} />
      {!data && !error && <Waiting />}
      {data && <Arrival bench={data} />}
    </>
  );
}

const STAGE = { arrival: 'at arrival', finding: 'found', done: 'done' } as const;

/** One more photo of the casting as it stands now. */
function AddPhoto({ bench }: { bench: BenchCasting }) {
  const add = useAppCommand('photos/add-photo');
  const begun = bench.operations.some((row) => row.mark === 'done');
  return (
    <SheetBody>
      <PhotoTaker
        photos={[]}
        onPhotos={([photo]) => {
          if (!photo) return;
          void add.send({
            ticketId: bench.ticketId,
            castingId: bench.castingId,
            stage: begun ? 'done' : 'arrival',
            caption: null,
            takenAt: photo.takenAt,
            file: { sha256: photo.sha256 },
          });
        }}
      />
      <ErrorNote error={add.error} />
    </SheetBody>
  );
}

function Arrival({ bench }: { bench: BenchCasting }) {
  const { arrival, photos } = bench;
  return (
    <div className={css.page}>
      <Sheet title="Photos" note={`${photos.length}`} scroll stop>
        {photos.length === 0 && <Empty>No photos of this casting yet. Take the first.</Empty>}
        <AddPhoto bench={bench} />
        <ul className={css.photos}>
          {photos.map((photo) => (
            <li key={photo.id}>
              <a href={fileUrl(photo.sha256)} target="_blank" rel="noreferrer">
                <img src={fileUrl(photo.sha256)} alt={photo.caption ?? `Photo ${STAGE[photo.stage]}`} loading="lazy" />
              </a>
              <span>
                {photo.caption ?? ''} {STAGE[photo.stage]}
              </span>
            </li>
          ))}
        </ul>
      </Sheet>
      <Sheet title="Came with" scroll stop>
        {arrival.items.length === 0 && <Empty>Nothing was listed beside the casting itself.</Empty>}
        <Rows label="Came with">
          {arrival.items.map((item) => (
            <Row
              key={item.id}
              title={item.words}
              note={[item.container, item.customersOwn && "customer's own", ...item.marks].filter(Boolean).join(', ')}
              end={<b>{item.countWords}</b>}
              endNote={item.removeBeforeWash && item.removedAt === null ? 'take off before the wash' : undefined}
            />
          ))}
        </Rows>
        <SheetHead title="Seen at arrival" />
        {arrival.marks.length === 0 && arrival.notes.length === 0 && <Empty>Nothing was marked.</Empty>}
        <Rows label="Seen at arrival">
          {arrival.marks.map((mark, n) => (
            <Row key={mark.id} lead={<b>{n + 1}</b>} title={mark.words} />
          ))}
          {arrival.notes.map((note) => (
            <Row key={note} title={note} />
          ))}
        </Rows>
      </Sheet>
    </div>
  );
}
