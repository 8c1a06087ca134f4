/** An issued invoice: it cannot be edited. Payment, what is on the account, credit note, its paper. */
import { useState } from 'react';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useMay } from '../../../client/use-me.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { releaseAddress, ticketAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { type DrawnPaper, PaperPreview } from '../../../kit/paper-preview.tsx';
import { PageName, Sheet, SheetBody, TitleBlock, TitleCell } from '../../../kit/sheet.tsx';
import type { Invoice } from '../books-shapes.ts';
import { type TicketOf, titlesOf } from '../invoice-titles.ts';
import css from './bill-page.module.css';
import { CreditForm } from './credit-form.tsx';
import { LineTable } from './line-table.tsx';
import { OnAccount } from './on-account.tsx';
import { Sums } from './sums.tsx';
import { TakePayment } from './take-payment.tsx';

type Props = Readonly<{ id: number; ticket: TicketOf; switcher: React.ReactNode }>;

export function IssuedPane({ id, ticket, switcher }: Props) {
  const { data: invoice, error } = useAppQuery('invoices/get-invoice', { invoiceId: id }, { ticket: ticket.ticketId });
  const print = useAppCommand('documents/print-paper');
  const [paper, setPaper] = useState<DrawnPaper | null>(null);
  const [crediting, setCrediting] = useState(false);
  const draw = () =>
    void print.send({ wish: { paper: 'invoice', invoiceId: id } }).then((drawn) => drawn && setPaper(drawn));
  useAct('print', paper ? undefined : draw);
  useAct('leave', crediting ? () => setCrediting(false) : undefined);
  if (error) return <ErrorNote error={error} />;
  if (!invoice) return <Waiting />;
  const castings = titlesOf(ticket);
  const left = crediting ? (
    <CreditForm invoice={invoice} onDone={() => setCrediting(false)} />
  ) : (
    <Sheet title="Lines" note="issued, cannot be edited. Correct by credit note" end={switcher} scroll stop>
      <LineTable lines={invoice.lines} castings={castings} figures={invoice.bill.figures} />
    </Sheet>
  );
  return (
    <div className={css.page}>
      <PageName>{`Invoice ${invoice.number}`}</PageName>
      <Head invoice={invoice} ticket={ticket} />
      <div className={css.columns}>
        {paper ? <PaperPreview paper={paper} acts={<Button onPress={() => setPaper(null)}>Back</Button>} /> : left}
        <Sheet title="What is owed" scroll>
          <Owed invoice={invoice} ticket={ticket} onReceipt={setPaper} />
        </Sheet>
        <OnAccount
          invoice={invoice}
          onPaper={setPaper}
          error={print.error}
          onPrint={draw}
          onCredit={() => setCrediting(true)}
        />
      </div>
      <KeyHints
        hints={[
          { keys: [keysOf('go')], words: 'take payment' },
          { keys: [keysOf('print')], words: 'print' },
        ]}
      />
    </div>
  );
}

function Head({ invoice, ticket }: { invoice: Invoice; ticket: TicketOf }) {
  const format = useFormat();
  return (
    <TitleBlock columns="auto auto minmax(0, 1.6fr) auto auto auto">
      <TitleCell label="Invoice" big>
        {invoice.number}
      </TitleCell>
      <TitleCell label="Ticket" note={ticket.word}>
        <a href={ticketAddress(invoice.ticketNumber)}>{invoice.ticketNumber}</a>
      </TitleCell>
      <TitleCell
        label="Customer"
        note={[invoice.contact, invoice.orderNumber && `order ${invoice.orderNumber}`].filter(Boolean).join(', ')}
      >
        {invoice.printName}
      </TitleCell>
      <TitleCell label="Dated">{format.day(invoice.issuedOn)}</TitleCell>
      <TitleCell label="Due" note={invoice.termsWords}>
        {format.day(invoice.dueOn)}
      </TitleCell>
      <TitleCell label="State">{invoice.word}</TitleCell>
    </TitleBlock>
  );
}

function Owed({
  invoice,
  ticket,
  onReceipt,
}: {
  invoice: Invoice;
  ticket: TicketOf;
  onReceipt: (paper: DrawnPaper | null) => void;
}) {
  const format = useFormat();
  const may = useMay();
  const taken = [
    ...invoice.payments.map((one) => ({
      words: `${one.receipt}, ${one.kind}`,
      note: format.day(one.receivedOn),
      amount: one.amount,
    })),
    ...invoice.credits.map((one) => ({ words: `Credit ${one.number}`, note: one.words, amount: one.total })),
  ];
  const release = <a href={releaseAddress(invoice.ticketNumber)}>release the pieces of ticket {ticket.number}</a>;
  return (
    <>
      <Sums bill={invoice.bill} taken={taken} toPay={invoice.balance} />
      {invoice.balance > 0 && may.has('money:take') && (
        <TakePayment
          name={`invoice-${invoice.number}`}
          customerId={invoice.customerId}
          goes={{ to: 'invoice', invoiceId: invoice.id }}
          open={invoice.balance}
          account={
            <p>
              {format.money(invoice.balance)} stays open on the account, {invoice.termsWords}, due{' '}
              {format.day(invoice.dueOn)}. Nothing is taken now.
            </p>
          }
          onReceipt={onReceipt}
        />
      )}
      {invoice.balance <= 0 && (
        <SheetBody>
          <p role="status">Nothing is open on this invoice.</p>
        </SheetBody>
      )}
      <p className={css.then}>Then: {release}.</p>
    </>
  );
}
