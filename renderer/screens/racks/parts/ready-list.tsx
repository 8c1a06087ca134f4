/** What is ready to hand over, and where to fetch it. */
import { useState } from 'react';
import { useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { releaseAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import { Asked } from '../../../kit/state.tsx';
import { Tag } from '../../../kit/tag.tsx';
import { ThingRows } from './places.tsx';

export function ReadyList() {
  const { data: home, error, isPending } = useAppQuery('home/get-counter', {});
  const [fetching, setFetching] = useState(false);
  const format = useFormat();
  if (isPending) return <Waiting />;
  if (error) return <ErrorNote error={error} />;
  const { rows, count } = home.ready;
  const ids = rows.flatMap((row) => (row.target.ticketId === null ? [] : [row.target.ticketId]));
  if (fetching && ids.length > 0) return <FetchList ticketIds={ids} onDone={() => setFetching(false)} />;
  return (
    <Sheet title="Ready to hand over" end={count > 0 ? `${count}` : undefined} scroll>
      {count === 0 && <Empty>Nothing stands ready.</Empty>}
      <Rows label="Ready to hand over">
        {rows.map((row) => (
          <Row
            key={row.ticketNumber}
            href={row.ticketNumber === null ? undefined : releaseAddress(row.ticketNumber)}
            lead={row.tags[0] && <Tag number={row.tags[0].tag} metal={row.tags[0].metal.class} />}
            title={<b>{row.customer}</b>}
            note={`${row.ticketNumber}. ${row.words}`}
            end={row.right === 'tell them' ? <Asked>{row.right}</Asked> : row.right}
            endNote={row.toPay > 0 ? `${format.money(row.toPay)} to pay` : 'nothing to pay'}
          />
        ))}
      </Rows>
      {ids.length > 0 && (
        <SheetFoot>
          <Button onPress={() => setFetching(true)}>Where to fetch them</Button>
        </SheetFoot>
      )}
    </Sheet>
  );
}

function FetchList({ ticketIds, onDone }: { ticketIds: number[]; onDone: () => void }) {
  const { data, error, isPending } = useAppQuery('racks/get-pick-list', { ticketIds });
  if (isPending) return <Waiting />;
  return (
    <Sheet title="Where to fetch them" note={data?.words} scroll>
      <ErrorNote error={error} />
      {data && data.nowhere > 0 && (
        <SheetBody>
          <p>
            {data.nowhere === 1 ? '1 piece was' : `${data.nowhere} pieces were`} never put away. Look where they were
            worked on.
          </p>
        </SheetBody>
      )}
      {data && <ThingRows label="Things to fetch, in the order of the places" things={data.things} place />}
      <SheetFoot>
        <Button onPress={onDone}>Back to the list</Button>
      </SheetFoot>
    </Sheet>
  );
}
