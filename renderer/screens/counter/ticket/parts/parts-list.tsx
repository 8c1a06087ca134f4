/** Parts of a ticket: needed, ordered, here, checked against the job, fitted; each step is one press. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery } from '../../../../client/use-app.ts';
import { useMay } from '../../../../client/use-me.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Button } from '../../../../kit/button.tsx';
import { readCount } from '../../../../kit/count.tsx';
import { Field } from '../../../../kit/field.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { Row, Rows } from '../../../../kit/rows.tsx';
import { SheetHead } from '../../../../kit/sheet.tsx';
import css from './parts-list.module.css';

type Part = OutputOf<App['parts/list-parts']>['parts'][number];

/** Nothing when the ticket has no parts. */
export function PartsList({ ticketId }: { ticketId: number }) {
  const may = useMay();
  const format = useFormat();
  const { data } = useAppQuery('parts/list-parts', { ticketId }, { ticket: ticketId });
  const [open, setOpen] = useState<number | null>(null);
  if (!data || data.parts.length === 0) return null;
  const chosen = data.parts.find((part) => part.id === open);
  return (
    <>
      <SheetHead title="Parts" end={`${data.parts.length}`} />
      <Rows label="Parts">
        {data.parts.map((part) => (
          <Row
            key={part.id}
            title={
              <>
                {part.quantity} × {part.words}
              </>
            }
            note={[part.tag, part.blocks && `${part.blocks} waits for it`, part.supplierWords]
              .filter(Boolean)
              .join(', ')}
            end={part.word}
            endNote={
              part.expectedOn && part.word !== 'here' && part.word !== 'fitted'
                ? `expected ${format.day(part.expectedOn)}`
                : undefined
            }
            onOpen={may.has('parts:edit') ? () => setOpen(open === part.id ? null : part.id) : undefined}
            selected={open === part.id}
          />
        ))}
      </Rows>
      {chosen && <PartSteps key={`${chosen.id}-${chosen.version}`} part={chosen} />}
    </>
  );
}

function PartSteps({ part }: { part: Part }) {
  const order = useAppCommand('parts/order-part');
  const receive = useAppCommand('parts/receive-part');
  const check = useAppCommand('parts/check-against-job');
  const fit = useAppCommand('parts/fit-part');
  const giveBack = useAppCommand('parts/return-part');
  const [where, setWhere] = useState('');
  const [day, setDay] = useState('');
  const [count, setCount] = useState(String(part.quantity));
  const seen = { part: part.id, seenVersion: part.version };
  const waits = part.word !== 'here' && part.word !== 'fitted' && part.word !== 'returned';
  return (
    <div className={css.steps}>
      {waits && part.source !== 'customer' && (
        <div className={css.step}>
          <Field
            label="Ordered at"
            value={where}
            onChange={setWhere}
            error={order.error?.reply.fields?.supplierWords}
          />
          <Field
            label="Expected on"
            type="date"
            value={day}
            onChange={setDay}
            error={order.error?.reply.fields?.expectedOn}
          />
          <Button
            working={order.pending}
            onPress={() => void order.send({ ...seen, supplierWords: where.trim() || null, expectedOn: day || null })}
          >
            Ordered
          </Button>
        </div>
      )}
      {waits && (
        <div className={css.step}>
          <Field
            label="Pieces here"
            inputMode="numeric"
            value={count}
            onChange={setCount}
            error={receive.error?.reply.fields?.count}
          />
          <Button
            working={receive.pending}
            onPress={() => void receive.send({ ...seen, count: readCount(count, 10_000) ?? 0 })}
          >
            Here
          </Button>
        </div>
      )}
      {part.word === 'here' && (
        <div className={css.step}>
          {part.checked === null && (
            <Button working={check.pending} onPress={() => void check.send(seen)}>
              Checked against the job
            </Button>
          )}
          <Button working={fit.pending} onPress={() => void fit.send(seen)}>
            Fitted
          </Button>
          <Button kind="out" working={giveBack.pending} onPress={() => void giveBack.send(seen)}>
            Sent back
          </Button>
        </div>
      )}
      <ErrorNote
        error={order.error ?? receive.error ?? check.error ?? fit.error ?? giveBack.error}
        fieldsShown={['supplierWords', 'expectedOn', 'count']}
      />
    </div>
  );
}
