/** All benches: what is on each machine and how much is ahead. */
import { useAppQuery } from '../../client/use-app.ts';
import { ErrorNote } from '../../kit/notice.tsx';
import { Waiting } from '../../kit/pane.tsx';
import { Row, Rows } from '../../kit/rows.tsx';
import { Empty, Sheet } from '../../kit/sheet.tsx';
import { BandTitle } from '../../kit/slots.tsx';
import { Hold } from '../../kit/state.tsx';
import { queueAddress } from './bench-addresses.ts';
import { KeptHere } from './parts/kept-here.tsx';

export function CentresScreen() {
  const { data, error } = useAppQuery('floor/list-centres', {});
  return (
    <>
      <BandTitle>Other benches</BandTitle>
      <KeptHere />
      <ErrorNote error={error} />
      {!data && !error && <Waiting />}
      {data && (
        <Sheet title="Benches" note="touch one to see its queue" scroll>
          {data.centres.length === 0 && (
            <Empty>The shop's benches will stand here once they are entered in Shop.</Empty>
          )}
          <Rows label="Benches">
            {data.centres.map((centre) => (
              <Row
                key={centre.id}
                href={queueAddress(centre.id)}
                title={<b>{centre.name}</b>}
                note={centre.words}
                end={centre.running > 0 ? `${centre.running} on the machine` : undefined}
                endNote={centre.held > 0 ? <Hold>{centre.held} on hold</Hold> : undefined}
              />
            ))}
          </Rows>
        </Sheet>
      )}
    </>
  );
}
