/** Money that was not put on an invoice goes back, with a receipt of its own. */
import { useState } from 'react';
import { readMoney } from '#core/kernel/format.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { DrawnPaper } from '../../../kit/paper-preview.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { SheetBody, SheetHead } from '../../../kit/sheet.tsx';

type Kind = 'cash' | 'card' | 'transfer' | 'cheque';

export function PayBack({ id, onPaper }: { id: number; onPaper: (paper: DrawnPaper | null) => void }) {
  const format = useFormat();
  const held = (useAppQuery('payments/list-payments', { customerId: id }).data?.payments ?? []).filter(
    (one) => one.left > 0,
  );
  const [at, setAt] = useState<number | null>(null);
  const chosen = held.find((one) => one.id === at);
  if (held.length === 0) return null;
  return (
    <>
      <SheetHead title="Pay back" note="held and on no invoice" />
      <Rows label="Held">
        {held.map((one) => (
          <Row
            key={one.id}
            title={one.receipt}
            note={format.day(one.receivedOn)}
            end={format.money(one.left)}
            endNote="pay back"
            selected={one.id === at}
            onOpen={() => setAt(one.id)}
          />
        ))}
      </Rows>
      {chosen && (
        <PayBackForm
          key={chosen.id}
          paymentId={chosen.id}
          left={chosen.left}
          onPaper={onPaper}
          onDone={() => setAt(null)}
        />
      )}
    </>
  );
}

function PayBackForm({
  paymentId,
  left,
  onPaper,
  onDone,
}: {
  paymentId: number;
  left: number;
  onPaper: (paper: DrawnPaper | null) => void;
  onDone: () => void;
}) {
  const format = useFormat();
  const refund = useAppCommand('payments/refund-payment');
  const print = useAppCommand('documents/print-paper');
  const [kind, setKind] = useState<Kind>('cash');
  const [text, setText] = useState('');
  const [words, setWords] = useState('');
  const amount = text.trim() === '' ? left : readMoney(text, format.settings);
  const wrong = amount === null ? 'Write an amount, for example 35.00.' : undefined;
  const run = async () => {
    if (amount === null) return;
    const kept = await refund.send({ paymentId, amount, kind, words });
    if (!kept) return;
    onPaper((await print.send({ wish: { paper: 'receipt', paymentId: kept.paymentId } })) ?? null);
    onDone();
  };
  const fields = refund.error?.reply.fields ?? {};
  return (
    <SheetBody>
      <Choice<Kind>
        label="By"
        options={[
          { value: 'cash', words: 'Cash' },
          { value: 'card', words: 'Card' },
          { value: 'transfer', words: 'Transfer' },
          { value: 'cheque', words: 'Cheque' },
        ]}
        value={kind}
        onChange={setKind}
      />
      <Field
        label="Amount; empty: all of it"
        inputMode="decimal"
        value={text}
        placeholder={format.money(left)}
        onChange={setText}
        error={wrong ?? fields.amount}
      />
      <Field label="Why" value={words} onChange={setWords} error={fields.words} />
      <ErrorNote error={refund.error ?? print.error} fieldsShown={['amount', 'words']} />
      <Button
        working={refund.pending}
        shut={wrong ?? (words.trim() === '' ? 'Write why.' : undefined)}
        onPress={() => void run()}
      >
        {`Pay back ${amount === null ? '' : format.money(amount)} and print receipt`}
      </Button>
    </SheetBody>
  );
}
