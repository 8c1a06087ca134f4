/** The foot of a bench page: what is kept on this tablet alone, since when. */
import { useLink } from '../../../client/use-app.ts';
import { useOutbox, useOutboxState } from '../../../client/use-outbox.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { FootKeys } from '../../../kit/slots.tsx';

export function KeptHere({ children }: { children?: React.ReactNode }) {
  return (
    <FootKeys>
      {children}
      <Alone />
    </FootKeys>
  );
}

function Alone() {
  const { entries, fragile } = useOutboxState();
  const { lostAt } = useLink();
  const format = useFormat();
  const outbox = useOutbox();
  const waiting = entries.filter((entry) => !entry.refused).length;
  const refused = entries.length - waiting;
  return (
    <span role="status">
      {lostAt && <b>Working on this tablet alone since {format.at(lostAt, format.local(lostAt).day)}. </b>}
      {waiting > 0 && `${count(waiting)} kept here, not sent yet. `}
      {refused > 0 && (
        <>
          <b>{count(refused)} not taken: see the place. </b>
          <button type="button" onClick={() => void outbox.send()}>
            Send again
          </button>
        </>
      )}
      {fragile && entries.length > 0 && <b>This tablet cannot keep them over a restart. </b>}
    </span>
  );
}

const count = (n: number): string => (n === 1 ? '1 reading' : `${n} readings`);
