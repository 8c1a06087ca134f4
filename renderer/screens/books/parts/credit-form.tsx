/** A credit note: whole lines or amounts of them, with a reason. */
import { useAppCommand } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Choice, Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import type { Invoice } from '../books-shapes.ts';
import css from './credit-form.module.css';
import { amountWrong, type CreditReason, creditInput, creditMissing, EMPTY_CREDIT, isCredit } from './credit-typed.ts';

const REASONS: readonly Readonly<{ value: CreditReason; words: string }>[] = [
  { value: 'price_error', words: 'wrong price' },
  { value: 'quality', words: 'quality' },
  { value: 'goodwill', words: 'goodwill' },
  { value: 'core', words: 'core came back' },
  { value: 'return', words: 'part returned' },
];

export function CreditForm({ invoice, onDone }: { invoice: Invoice; onDone: () => void }) {
  const format = useFormat();
  const [typed, set] = useTyped(`credit-${invoice.number}`, EMPTY_CREDIT, isCredit);
  const command = useAppCommand('invoices/credit-invoice');
  const ids = invoice.lines.flatMap((line) => (line.id === null ? [] : [line.id]));
  const sent = ids.filter((id) => typed.lines[id] !== undefined);
  const fields = command.error?.reply.fields ?? {};
  const errorOf = (id: number) =>
    amountWrong(typed.lines[id], format.settings) ?? fields[`lines.${(sent as readonly number[]).indexOf(id)}.amount`];
  const setLine = (id: number, text: string | undefined) =>
    set((before) => {
      const { [id]: _, ...rest } = before.lines;
      return { ...before, lines: text === undefined ? rest : { ...rest, [id]: text } };
    });
  return (
    <FormSheet
      title="Credit note"
      note={`for invoice ${invoice.number}`}
      act={`Credit ${sent.length} ${sent.length === 1 ? 'line' : 'lines'} of invoice ${invoice.number}`}
      command={command}
      shut={creditMissing(typed, format.settings)}
      fieldsShown={['reason', 'words', ...sent.map((_, index) => `lines.${index}.amount`)]}
      onDone={onDone}
      onGo={() =>
        void command.send(creditInput(invoice.id, ids, typed, format.settings)).then((kept) => {
          if (!kept) return;
          set(() => EMPTY_CREDIT);
          onDone();
        })
      }
    >
      <ul className={css.lines} aria-label="Lines of the invoice">
        {invoice.lines.map((line) =>
          line.id === null ? null : (
            <CreditLine
              key={line.id}
              words={`${line.tag ?? ''} ${line.words}`.trim()}
              amount={format.money(line.amount)}
              text={typed.lines[line.id]}
              error={errorOf(line.id)}
              onText={(text) => line.id !== null && setLine(line.id, text)}
            />
          ),
        )}
      </ul>
      <Choice
        label="Reason"
        options={REASONS}
        value={typed.reason}
        onChange={(reason) => set((before) => ({ ...before, reason }))}
        error={fields.reason}
      />
      <Field
        label="In words, they print"
        value={typed.words}
        onChange={(words) => set((before) => ({ ...before, words }))}
        error={fields.words}
      />
    </FormSheet>
  );
}

function CreditLine({
  words,
  amount,
  text,
  error,
  onText,
}: {
  words: string;
  amount: string;
  /** Undefined: not credited. */
  text: string | undefined;
  error: string | undefined;
  onText: (text: string | undefined) => void;
}) {
  return (
    <li>
      <Tick label={words} checked={text !== undefined} onChange={(on) => onText(on ? '' : undefined)} />
      <span className={css.amount}>{amount}</span>
      {text !== undefined && (
        <Field
          label={`Amount of ${words}; empty: all of it`}
          quiet
          placeholder="all of it"
          inputMode="decimal"
          value={text}
          onChange={onText}
          error={error}
        />
      )}
    </li>
  );
}
