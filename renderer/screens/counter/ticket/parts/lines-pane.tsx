/** What is charged and why: every line with its working, the sums, the taxes, the estimates and answers. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery } from '../../../../client/use-app.ts';
import { useMay } from '../../../../client/use-me.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Button } from '../../../../kit/button.tsx';
import { classes } from '../../../../kit/class-names.ts';
import { Field } from '../../../../kit/field.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { Waiting } from '../../../../kit/pane.tsx';
import { Sheet } from '../../../../kit/sheet.tsx';
import type { Ticket } from '../ticket-shapes.ts';
import css from './lines-pane.module.css';
import { PartsList } from './parts-list.tsx';

type PriceSheet = OutputOf<App['pricing/get-sheet']>;

export function LinesPane({ ticket, onWork }: { ticket: Ticket; onWork: () => void }) {
  const { data: sheet, error } = useAppQuery(
    'pricing/get-sheet',
    { ticketId: ticket.ticketId },
    { ticket: ticket.ticketId },
  );
  return (
    <Sheet
      title="Lines and prices"
      note={sheet?.authorised.words}
      end={<Button onPress={onWork}>Castings and operations</Button>}
      scroll
    >
      <ErrorNote error={error} />
      {!sheet && !error && <Waiting />}
      {sheet && <LinesTable sheet={sheet} />}
      <PartsList ticketId={ticket.ticketId} />
    </Sheet>
  );
}

function LinesTable({ sheet }: { sheet: PriceSheet }) {
  const format = useFormat();
  const may = useMay();
  const [open, setOpen] = useState<number | null>(null);
  return (
    <table className={css.lines}>
      <thead>
        <tr>
          <th>Tag</th>
          <th>Line</th>
          <th>Working</th>
          <th>Answer</th>
          <th className={css.figure}>Amount</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {sheet.lines.map((line) => (
          <tr key={line.id} className={classes(line.withdrawn !== null && css.withdrawn)}>
            <td>{line.castings.map((casting) => casting.tag).join(', ')}</td>
            <td>
              {line.shopWords}
              {line.words !== line.shopWords && <small>{line.words}</small>}
              {line.wishedWords && <small>they said "{line.wishedWords}"</small>}
              {line.withdrawn && <small>withdrawn: {line.withdrawn.why}</small>}
              {open === line.id && <WithdrawForm line={line} onDone={() => setOpen(null)} />}
            </td>
            <td className={css.quiet}>{line.working}</td>
            <td>{line.answer ?? (line.covered ? 'covered' : line.coverWords || 'not asked')}</td>
            <td className={css.figure}>{format.money(line.amount)}</td>
            <td className={css.act}>
              {may.has('tickets:edit') && line.withdrawn === null && !line.committed && open !== line.id && (
                <Button label={`Withdraw ${line.shopWords}`} onPress={() => setOpen(line.id)}>
                  Withdraw
                </Button>
              )}
            </td>
          </tr>
        ))}
        {sheet.bill.derived.map((line) => (
          <tr key={`${line.role}-${line.words}`}>
            <td />
            <td>{line.words}</td>
            <td className={css.quiet} colSpan={2}>
              {line.working}
            </td>
            <td className={css.figure}>{format.money(line.amount)}</td>
            <td />
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr className={css.total}>
          <td />
          <td colSpan={3}>Before tax</td>
          <td className={css.figure}>{format.money(sheet.bill.figures.beforeTax)}</td>
          <td />
        </tr>
        {sheet.bill.taxes.map((tax) => (
          <tr key={tax.code}>
            <td />
            <td>{tax.words}</td>
            <td className={css.quiet} colSpan={2}>
              {tax.exempt ?? tax.working}
            </td>
            <td className={css.figure}>{format.money(tax.amount)}</td>
            <td />
          </tr>
        ))}
        <tr className={css.total}>
          <td />
          <td colSpan={3}>Total</td>
          <td className={css.figure}>{format.moneySign(sheet.bill.figures.total)}</td>
          <td />
        </tr>
      </tfoot>
    </table>
  );
}

function WithdrawForm({ line, onDone }: { line: PriceSheet['lines'][number]; onDone: () => void }) {
  const withdraw = useAppCommand('pricing/withdraw-line');
  const [why, setWhy] = useState('');
  return (
    <div className={css.form}>
      <Field
        label={`Why is ${line.shopWords} withdrawn?`}
        value={why}
        onChange={setWhy}
        error={withdraw.error?.reply.fields?.why}
        autoFocus
      />
      <ErrorNote error={withdraw.error} fieldsShown={['why']} />
      <span className={css.acts}>
        <Button
          working={withdraw.pending}
          onPress={() =>
            void withdraw.send({ lineId: line.id, seenVersion: line.version, why }).then((done) => done && onDone())
          }
        >
          Withdraw {line.shopWords}
        </Button>
        <Button onPress={onDone}>Keep it</Button>
      </span>
    </div>
  );
}
