/** Receipts, newest first; a row draws its paper. */
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { DrawnPaper } from '../../../kit/paper-preview.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty } from '../../../kit/sheet.tsx';
import type { Payment } from '../books-shapes.ts';

/** `on 2041, 344.47; 200.00 held`. */
function whereItWent(payment: Payment, money: (amount: number) => string): string {
  const on = payment.applied.map((one) => `${money(one.amount)} on ${one.invoiceNumber}`);
  const held = payment.left > 0 ? [`${money(payment.left)} held`] : [];
  const back = payment.reverses ? [`pays back ${payment.reverses}`] : [];
  return [...on, ...held, ...back].join(', ');
}

export function ReceiptRows({
  wish,
  onPaper,
}: {
  wish: Readonly<{ customerId?: number; ticketId?: number }>;
  onPaper: (paper: DrawnPaper) => void;
}) {
  const format = useFormat();
  const { data, error } = useAppQuery('payments/list-payments', wish);
  const print = useAppCommand('documents/print-paper');
  if (error) return <ErrorNote error={error} />;
  return (
    <>
      {data?.payments.length === 0 && <Empty>No money was taken yet.</Empty>}
      <Rows label="Receipts">
        {data?.payments.map((one) => (
          <Row
            key={one.id}
            title={`${one.receipt}, ${one.kind}`}
            note={[format.day(one.receivedOn), one.words, one.by, whereItWent(one, format.money)]
              .filter(Boolean)
              .join(', ')}
            end={format.money(one.amount)}
            endNote="print"
            onOpen={() =>
              void print
                .send({ wish: { paper: 'receipt', paymentId: one.id } })
                .then((drawn) => drawn && onPaper(drawn))
            }
          />
        ))}
      </Rows>
      <ErrorNote error={print.error} />
    </>
  );
}
