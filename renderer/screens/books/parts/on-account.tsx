/** What else stands on the account of an invoice: deposits held, payments, approvals, credit notes. */
import type { RequestRefused } from '../../../client/request-refused.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { useMay } from '../../../client/use-me.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { keysOf } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { DrawnPaper } from '../../../kit/paper-preview.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetHead } from '../../../kit/sheet.tsx';
import { accountAddress, type Invoice } from '../books-shapes.ts';
import css from './bill-page.module.css';
import { ReceiptRows } from './receipt-rows.tsx';

export function OnAccount({
  invoice,
  error,
  onPaper,
  onPrint,
  onCredit,
}: {
  invoice: Invoice;
  error: RequestRefused | null;
  onPaper: (paper: DrawnPaper) => void;
  onPrint: () => void;
  onCredit: () => void;
}) {
  const format = useFormat();
  const may = useMay();
  const apply = useAppCommand('payments/allocate-payment');
  const nothing = invoice.held.length + invoice.approvals.length + invoice.credits.length === 0;
  return (
    <Sheet title="On this account" scroll>
      {nothing && <Empty>Deposits held, approvals and credit notes are listed here.</Empty>}
      <Rows label="Held for the customer">
        {invoice.held.map((one) => (
          <Row
            key={one.paymentId}
            title={`Held, ${one.receipt}`}
            note={format.day(one.receivedOn)}
            end={format.money(one.left)}
            endNote={one.applies > 0 && may.has('money:take') ? 'put it on' : undefined}
            onOpen={
              one.applies > 0 && may.has('money:take')
                ? () => void apply.send({ paymentId: one.paymentId, invoiceId: invoice.id, amount: one.applies })
                : undefined
            }
          />
        ))}
      </Rows>
      <Rows label="Approved">
        {invoice.approvals.map((one) => (
          <Row key={`${one.at}-${one.words}`} title={one.words} note={format.at(one.at)} end="yes" />
        ))}
      </Rows>
      <Rows label="Credit notes">
        {invoice.credits.map((one) => (
          <Row
            key={one.id}
            title={`Credit note ${one.number}`}
            note={`${format.day(one.issuedOn)}, ${one.words}`}
            end={`−${format.money(one.total)}`}
          />
        ))}
      </Rows>
      <SheetHead title="Receipts of this customer" />
      <ReceiptRows wish={{ customerId: invoice.customerId }} onPaper={onPaper} />
      <ErrorNote error={apply.error ?? error} />
      <div className={css.bottom}>
        {may.has('money:credit') && <Button onPress={onCredit}>Credit note</Button>}
        <Button keys={keysOf('print')} onPress={onPrint}>
          Print invoice
        </Button>
        <Button href={accountAddress(invoice.customerId)}>Whole account</Button>
      </div>
    </Sheet>
  );
}
