/** What an invoice would say now. Nothing is written and no number is taken before it is issued. */
import { useState } from 'react';
import { useAppCommand } from '../../../client/use-app.ts';
import { useMay } from '../../../client/use-me.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { ticketAddress } from '../../../kit/addresses.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { Tick } from '../../../kit/choice.tsx';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { type DrawnPaper, PaperPreview } from '../../../kit/paper-preview.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, PageName, Sheet, SheetBody, TitleBlock, TitleCell } from '../../../kit/sheet.tsx';
import type { Preview } from '../books-shapes.ts';
import { type TicketOf, titlesOf } from '../invoice-titles.ts';
import css from './bill-page.module.css';
import { LineTable } from './line-table.tsx';
import { Sums } from './sums.tsx';
import { TakePayment } from './take-payment.tsx';

type Props = Readonly<{
  preview: Preview;
  ticket: TicketOf;
  switcher: React.ReactNode;
  onIssued: (invoiceId: number) => void;
}>;

export function PreviewPane({ preview, ticket, switcher, onIssued }: Props) {
  const format = useFormat();
  const [depositing, setDepositing] = useState(false);
  const [receipt, setReceipt] = useState<DrawnPaper | null>(null);
  const castings = titlesOf(ticket);
  return (
    <div className={css.page}>
      <PageName>{`Bill of ticket ${ticket.number}`}</PageName>
      <TitleBlock columns="auto minmax(0, 1.6fr) auto auto auto">
        <TitleCell label="Ticket" big>
          {ticket.number}
        </TitleCell>
        <TitleCell label="Customer" note={ticket.customer.words}>
          {ticket.customer.name}
        </TitleCell>
        <TitleCell label="Would be dated">{format.day(preview.issuedOn)}</TitleCell>
        <TitleCell label="Due" note={preview.termsWords}>
          {format.day(preview.dueOn)}
        </TitleCell>
        <TitleCell label="State">not invoiced</TitleCell>
      </TitleBlock>
      <div className={css.columns}>
        <Sheet
          title="What the invoice will say"
          note={preview.last ? 'the last one' : 'a part'}
          end={switcher}
          scroll
          stop
        >
          <LineTable lines={preview.lines} castings={castings} figures={preview.bill.figures} />
        </Sheet>
        {receipt ? (
          <PaperPreview paper={receipt} acts={<Button onPress={() => setReceipt(null)}>Back</Button>} />
        ) : (
          <Sheet title={depositing ? 'Take a deposit' : 'What will be owed'} scroll>
            {depositing ? (
              <>
                <TakePayment
                  name={`deposit-${ticket.number}`}
                  customerId={ticket.customer.customerId}
                  goes={{ to: 'held', forTicketId: ticket.ticketId }}
                  open={0}
                  onReceipt={(paper) => {
                    setReceipt(paper);
                    setDepositing(false);
                  }}
                />
                <SheetBody>
                  <Button onPress={() => setDepositing(false)}>Not now</Button>
                </SheetBody>
              </>
            ) : (
              <Issue preview={preview} onIssued={onIssued} />
            )}
          </Sheet>
        )}
        <Beside preview={preview} ticket={ticket} onDeposit={depositing ? undefined : () => setDepositing(true)} />
      </div>
      <KeyHints
        hints={[
          { keys: [keysOf('go')], words: depositing ? 'take the deposit' : 'issue the invoice' },
          { keys: [keysOf('back')], words: 'back' },
        ]}
      />
    </div>
  );
}

function Issue({ preview, onIssued }: Pick<Props, 'preview' | 'onIssued'>) {
  const format = useFormat();
  const may = useMay();
  const issue = useAppCommand('invoices/issue-invoice');
  const [asked, setAsked] = useState(false);
  const [apply, setApply] = useState(true);
  const { total } = preview.bill.figures;
  const applied = apply ? preview.deposits.filter((one) => one.applies > 0) : [];
  const act = `Issue invoice for ${format.money(total)}`;
  const shut = preview.problems.length > 0 ? 'Mend first what stands above.' : undefined;
  const send = () =>
    void issue
      .send({ ticketId: preview.ticketId, seenTotal: total, applyDeposits: apply })
      .then((issued) => issued && onIssued(issued.invoiceId));
  const press = () => (asked ? send() : setAsked(true));
  useAct('go', may.has('money:issue') && shut === undefined ? press : undefined);
  useAct('leave', asked ? () => setAsked(false) : undefined);
  return (
    <>
      <Sums
        bill={preview.bill}
        taken={applied.map((one) => ({
          words: `Deposit ${one.receipt}`,
          note: format.day(one.receivedOn),
          amount: one.applies,
        }))}
        toPay={apply ? preview.toPay : total}
      />
      <SheetBody>
        {preview.deposits.length > 0 && (
          <Tick label="Put the deposits held on it" checked={apply} onChange={setApply} />
        )}
        {preview.problems.map((problem) => (
          <Notice key={problem.code} kind="wrong">
            {problem.words}
          </Notice>
        ))}
        {preview.notes.map((note) => (
          <Notice key={note} kind="ask">
            {note}
          </Notice>
        ))}
        <ErrorNote error={issue.error} />
        {asked && (
          <Notice acts={<Button onPress={() => setAsked(false)}>Not yet</Button>}>
            <b>Issue it?</b> It takes the next number and cannot be edited then; only a credit note corrects it.
          </Notice>
        )}
        {may.has('money:issue') && (
          <div className={css.act}>
            <GoButton wide keys={keysOf('go')} working={issue.pending} shut={shut} onPress={press}>
              {asked ? `Yes, issue it for ${format.money(total)}` : act}
            </GoButton>
          </div>
        )}
      </SheetBody>
    </>
  );
}

function Beside({
  preview,
  ticket,
  onDeposit,
}: Pick<Props, 'preview' | 'ticket'> & { onDeposit: (() => void) | undefined }) {
  const format = useFormat();
  const may = useMay();
  return (
    <Sheet title="On this account" scroll>
      {preview.deposits.length === 0 && preview.stays.length === 0 && (
        <Empty>Deposits held and lines that stay behind are listed here.</Empty>
      )}
      <Rows label="Deposits held">
        {preview.deposits.map((one) => (
          <Row
            key={one.paymentId}
            title="Deposit held"
            note={`${one.receipt}, ${format.day(one.receivedOn)}`}
            end={format.money(one.left)}
          />
        ))}
      </Rows>
      <Rows label="Lines that stay behind">
        {preview.stays.map((one) => (
          <Row key={one.lineId} title={one.words} note={one.why} end="stays" />
        ))}
      </Rows>
      {preview.earlierInvoices.length > 0 && (
        <SheetBody>
          <p>Invoiced before: {preview.earlierInvoices.join(', ')}</p>
        </SheetBody>
      )}
      <div className={css.bottom}>
        {may.has('money:take') && onDeposit && <Button onPress={onDeposit}>Take a deposit</Button>}
        <Button href={ticketAddress(ticket.number)}>To the ticket</Button>
      </div>
    </Sheet>
  );
}
