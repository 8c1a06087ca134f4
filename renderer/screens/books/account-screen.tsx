/** One account: the statement, its open invoices, receipts, and money taken on it. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppQuery } from '../../client/use-app.ts';
import { useMay } from '../../client/use-me.ts';
import { useFormat } from '../../client/use-shop.ts';
import { customerAddress, invoiceAddress } from '../../kit/addresses.ts';
import { Button } from '../../kit/button.tsx';
import { Choice } from '../../kit/choice.tsx';
import { ErrorNote } from '../../kit/notice.tsx';
import { Waiting } from '../../kit/pane.tsx';
import { type DrawnPaper, PaperPreview } from '../../kit/paper-preview.tsx';
import { Row, Rows } from '../../kit/rows.tsx';
import { Empty, PageName, Sheet, SheetBody, SheetHead, TitleBlock, TitleCell } from '../../kit/sheet.tsx';
import css from './account-screen.module.css';
import { PayBack } from './parts/pay-back.tsx';
import { ReceiptRows } from './parts/receipt-rows.tsx';
import { TakePayment } from './parts/take-payment.tsx';

type Statement = OutputOf<App['accounts/get-statement']>;

export function AccountScreen({ id }: { id: number }) {
  const { data: statement, error } = useAppQuery('accounts/get-statement', { customerId: id });
  const [paper, setPaper] = useState<DrawnPaper | null>(null);
  if (error) return <ErrorNote error={error} acts={<Button href="#/books">To the books</Button>} />;
  if (!statement) return <Waiting />;
  return (
    <div className={css.page}>
      <PageName>{`Account of ${statement.customer}`}</PageName>
      <Head statement={statement} />
      <div className={css.columns}>
        {paper ? (
          <PaperPreview paper={paper} acts={<Button onPress={() => setPaper(null)}>Back</Button>} />
        ) : (
          <StatementSheet statement={statement} />
        )}
        <OpenAndReceipts id={id} onPaper={setPaper} />
        <Money id={id} owed={statement.closing} onPaper={setPaper} />
      </div>
    </div>
  );
}

function Head({ statement }: { statement: Statement }) {
  const format = useFormat();
  const use = useAppQuery('accounts/get-account-use', { customerId: statement.customerId });
  return (
    <TitleBlock columns="minmax(0, 1.6fr) auto auto auto minmax(0, 1fr)">
      <TitleCell label="Account">
        <a href={customerAddress(statement.customerId)}>{statement.customer}</a>
      </TitleCell>
      <TitleCell label="Owed" big>
        {format.money(statement.closing)}
      </TitleCell>
      <TitleCell label="Not due">{format.money(statement.aged.current)}</TitleCell>
      <TitleCell label="Held, on no invoice">{format.money(statement.notApplied)}</TitleCell>
      <TitleCell label="Limit">{use.data?.words || 'none'}</TitleCell>
    </TitleBlock>
  );
}

function StatementSheet({ statement }: { statement: Statement }) {
  const format = useFormat();
  return (
    <Sheet
      title="Statement"
      note={`${format.day(statement.from)} to ${format.day(statement.asOf)}`}
      end={`before: ${format.money(statement.opening)}`}
      scroll
      stop
    >
      {statement.rows.length === 0 && <Empty>Invoices, credits and payments of this time stand here.</Empty>}
      {statement.rows.length > 0 && (
        <table className={css.statement}>
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Number</th>
              <th scope="col">What</th>
              <th scope="col">Amount</th>
              <th scope="col">Owed after</th>
            </tr>
          </thead>
          <tbody>
            {statement.rows.map((row) => (
              <tr key={`${row.kind}-${row.number}-${row.balance}`}>
                <td>{format.day(row.on)}</td>
                <td>{row.number}</td>
                <td>
                  {row.kind}
                  <small>
                    {row.words}
                    {row.disputed && ', disputed'}
                  </small>
                </td>
                <td>{format.money(row.amount)}</td>
                <td>{format.money(row.balance)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Sheet>
  );
}

function OpenAndReceipts({ id, onPaper }: { id: number; onPaper: (paper: DrawnPaper) => void }) {
  const format = useFormat();
  const invoices = useAppQuery('invoices/list-invoices', { customerId: id, openOnly: true });
  return (
    <Sheet title="Open invoices" scroll>
      <ErrorNote error={invoices.error} />
      {invoices.data?.rows.length === 0 && <Empty>No invoice of theirs is open.</Empty>}
      <Rows label="Open invoices">
        {invoices.data?.rows.map((row) => (
          <Row
            key={row.id}
            href={invoiceAddress(row.ticketNumber)}
            title={<b>{row.number}</b>}
            note={`ticket ${row.ticketNumber}, due ${format.day(row.dueOn)}, ${row.word}`}
            end={format.money(row.balance)}
          />
        ))}
      </Rows>
      <SheetHead title="Receipts" />
      <ReceiptRows wish={{ customerId: id }} onPaper={onPaper} />
    </Sheet>
  );
}

function Money({ id, owed, onPaper }: { id: number; owed: number; onPaper: (paper: DrawnPaper | null) => void }) {
  const may = useMay();
  const [goes, setGoes] = useState<'oldest' | 'held'>(owed > 0 ? 'oldest' : 'held');
  return (
    <Sheet title="Take money on this account" scroll>
      {may.has('money:take') ? (
        <>
          <SheetBody>
            <Choice
              label="It pays"
              options={[
                { value: 'oldest', words: 'the oldest first' },
                { value: 'held', words: 'nothing yet, keep it' },
              ]}
              value={goes}
              onChange={setGoes}
            />
          </SheetBody>
          <TakePayment
            name={`account-${id}`}
            customerId={id}
            goes={goes === 'oldest' ? { to: 'oldest' } : { to: 'held', forTicketId: null }}
            open={goes === 'oldest' ? owed : 0}
            onReceipt={onPaper}
          />
        </>
      ) : (
        <Empty>Counter, books and the owner take money.</Empty>
      )}
      {may.has('money:credit') && <PayBack id={id} onPaper={onPaper} />}
    </Sheet>
  );
}
