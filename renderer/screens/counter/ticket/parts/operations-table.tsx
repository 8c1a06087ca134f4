/** The operations of a casting in the order they are done. */
import { useFormat } from '../../../../client/use-shop.ts';
import { classes } from '../../../../kit/class-names.ts';
import { Asked, Hold } from '../../../../kit/state.tsx';
import type { Ticket, TicketCasting } from '../ticket-shapes.ts';
import css from './operations-table.module.css';

type Operation = Ticket['operations'][number];

export function OperationsTable({ ticket, casting }: { ticket: Ticket; casting: TicketCasting }) {
  const format = useFormat();
  const operations = ticket.operations.filter((operation) => operation.castingId === casting.castingId);
  if (operations.length === 0) return <p className={css.empty}>No work is asked for on this casting yet.</p>;
  return (
    <table className={css.operations}>
      <thead>
        <tr>
          <th className={css.group}>
            {casting.tagNo} {casting.positionWords}
          </th>
          <th>Operation</th>
          <th>Work centre</th>
          <th>State</th>
          <th>Who</th>
          <th className={css.figure}>Amount</th>
        </tr>
      </thead>
      <tbody>
        {operations.map((operation) => (
          <tr key={operation.id} className={classes(operation.next && css.next, operation.mark === 'off' && css.off)}>
            <td className={css.quiet}>
              {operation.group.startsWith('added') ? <Asked>{operation.group}</Asked> : operation.group}
            </td>
            <td>
              {operation.next ? <b>{operation.words}</b> : operation.words}
              {operation.second && <small>{operation.second}</small>}
            </td>
            <td className={css.quiet}>{operation.centre.name}</td>
            <td>
              <State operation={operation} held={isHeld(ticket, operation)} />
            </td>
            <td className={css.quiet}>{operation.whoWords}</td>
            <td className={css.figure}>{operation.amount === null ? '' : format.money(operation.amount)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const isHeld = (ticket: Ticket, operation: Operation): boolean =>
  ticket.holds.some((hold) => hold.operationId === operation.id);

function State({ operation, held }: { operation: Operation; held: boolean }) {
  if (held) return <Hold>{operation.right || operation.word}</Hold>;
  if (operation.mark === 'uncovered') return <b>{operation.word}</b>;
  const waits = operation.mark === 'open' ? operation.right : '';
  return <span className={waits ? css.quiet : undefined}>{waits || operation.word}</span>;
}
