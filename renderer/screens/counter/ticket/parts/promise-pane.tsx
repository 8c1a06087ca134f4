/** The promise on its rule of days, the first one dashed when it moved, and every change with its reason. */
import { formatDay } from '#core/kernel/format.ts';
import { useClient } from '../../../../client/use-app.ts';
import { useMay } from '../../../../client/use-me.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Button } from '../../../../kit/button.tsx';
import { PromiseRule } from '../../../../kit/rules.tsx';
import { Empty, Sheet } from '../../../../kit/sheet.tsx';
import { Late } from '../../../../kit/state.tsx';
import type { PanelName } from '../panel-names.ts';
import { pointOf, ruleDays } from '../promise-days.ts';
import type { Ticket } from '../ticket-shapes.ts';
import css from './promise-pane.module.css';

export function PromisePane({ ticket, onPanel }: { ticket: Ticket; onPanel: (name: PanelName) => void }) {
  const may = useMay();
  const format = useFormat();
  const client = useClient();
  const now = format.local(client.now());
  const { promise, firstPromise } = ticket;
  const moved = ticket.promises.length > 1;
  const days = promise ? ruleDays([now.day, promise.day, ...(moved && firstPromise ? [firstPromise.day] : [])]) : null;
  return (
    <Sheet
      title="Promise"
      note={ticket.promiseWords}
      end={
        may.has('tickets:edit') && (
          <Button onPress={() => onPanel('promise')}>{promise ? 'Change' : 'Promise a day'}</Button>
        )
      }
    >
      {!promise && <Empty>Nothing is promised yet.</Empty>}
      {promise && days && (
        <div className={css.rule}>
          <PromiseRule
            days={days.map((day) => formatDay(day).split(' ').slice(0, 2).join(' '))}
            now={pointOf(days, now)}
            first={moved ? pointOf(days, firstPromise) : undefined}
            promise={pointOf(days, promise)}
          />
        </div>
      )}
      {promise && (
        <p className={css.words}>
          {ticket.late ? <Late>late, was {promise.words}</Late> : <b>{promise.words}</b>}
          {promise.dependsOn && ` ${promise.dependsOn}`}
        </p>
      )}
    </Sheet>
  );
}
