/** Taking money: how, how much, slip number; the receipt is drawn at once. */
import { useAppCommand } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { GoButton } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { DrawnPaper } from '../../../kit/paper-preview.tsx';
import { EMPTY_PAYMENT, isPayment, type PayKind, readPayment } from './payment-typed.ts';
import css from './take-payment.module.css';

const KINDS: readonly Readonly<{ value: PayKind; words: string }>[] = [
  { value: 'card', words: 'Card' },
  { value: 'cash', words: 'Cash' },
  { value: 'cheque', words: 'Cheque' },
  { value: 'transfer', words: 'Transfer' },
];

/** Where the money goes: an invoice, the oldest open invoices, or kept (a deposit where a ticket is named). */
export type Goes =
  | Readonly<{ to: 'invoice'; invoiceId: number }>
  | Readonly<{ to: 'oldest' }>
  | Readonly<{ to: 'held'; forTicketId: number | null }>;

export function TakePayment({
  name,
  customerId,
  goes,
  open,
  account,
  onReceipt,
}: {
  /** Under which what is typed is kept. */
  name: string;
  customerId: number;
  goes: Goes;
  /** What is open; 0 where the sum has to be typed. */
  open: number;
  /** What stands in place of the payment when the bill stays on the account; none where that is no way. */
  account?: React.ReactNode;
  /** The money was taken; null: its receipt could not be drawn. */
  onReceipt: (paper: DrawnPaper | null) => void;
}) {
  const format = useFormat();
  const [typed, set] = useTyped(`payment-${name}`, EMPTY_PAYMENT, isPayment);
  const take = useAppCommand('payments/take-payment');
  const print = useAppCommand('documents/print-paper');
  const { amount, wrong, missing } = readPayment(typed, open, format.settings);
  const fields = take.error?.reply.fields ?? {};
  const change = (changes: Partial<typeof typed>) => set((before) => ({ ...before, ...changes }));
  const onAccount = typed.kind === 'account';
  const run = async () => {
    if (missing || amount === null || typed.kind === null || typed.kind === 'account') return;
    const taken = await take.send({
      customerId,
      kind: typed.kind,
      amount,
      apply: goes.to === 'invoice' ? [{ invoiceId: goes.invoiceId, amount }] : goes.to,
      forTicketId: goes.to === 'held' ? goes.forTicketId : null,
      words: typed.slip.trim() || null,
    });
    if (!taken) return;
    set(() => EMPTY_PAYMENT);
    onReceipt((await print.send({ wish: { paper: 'receipt', paymentId: taken.paymentId } })) ?? null);
  };
  useAct('go', onAccount ? undefined : () => void run());
  const sum = amount === null ? '' : ` ${format.money(amount)}`;
  const amountError = wrong ?? fields.amount ?? fields['apply.0.amount'];
  return (
    <div className={css.form}>
      <Choice
        label="How they pay"
        quiet
        columns={account ? 3 : 2}
        options={account ? [...KINDS, { value: 'account' as const, words: 'On account' }] : KINDS}
        value={typed.kind}
        onChange={(kind) => change({ kind })}
        error={fields.kind}
      />
      {onAccount ? (
        account
      ) : (
        <>
          <div className={css.two}>
            <Field
              label="Amount"
              inputMode="decimal"
              value={typed.amount}
              placeholder={open > 0 ? format.money(open) : ''}
              onChange={(text) => change({ amount: text })}
              error={amountError}
            />
            <Field label="Slip no." value={typed.slip} onChange={(slip) => change({ slip })} error={fields.words} />
          </div>
          <ErrorNote error={take.error ?? print.error} fieldsShown={['amount', 'apply.0.amount', 'kind', 'words']} />
          <div className={css.act}>
            <GoButton
              wide
              keys={keysOf('go')}
              working={take.pending || print.pending}
              shut={missing}
              onPress={() => void run()}
            >
              {`Take${sum} and print receipt`}
            </GoButton>
          </div>
        </>
      )}
    </div>
  );
}
