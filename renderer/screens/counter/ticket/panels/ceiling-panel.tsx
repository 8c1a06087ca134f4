/** Ceiling without a call: an answer of the customer like any other, with who, how and in which words. */
import { useState } from 'react';
import { readMoney } from '#core/kernel/format.ts';
import { useAppCommand } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Tick } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import { ANSWER_FIELDS, AnswerFields, answerInput, answerMissing, startAnswer } from '../../parts/answer-fields.tsx';
import type { PanelProps } from '../ticket-shapes.ts';

export function CeilingPanel({ ticket, onDone }: PanelProps) {
  const format = useFormat();
  const command = useAppCommand('approvals/set-ceiling');
  const [amount, setAmount] = useState('');
  const [taxIn, setTaxIn] = useState(ticket.money.basis === 'tax in');
  const [answer, setAnswer] = useState(() => startAnswer(ticket.customer.person, ticket.customer.phone));
  const cents = readMoney(amount, format.settings);
  const errors = command.error?.reply.fields ?? {};
  const wrong = amount.trim() !== '' && cents === null ? 'Write an amount, for example 900.00.' : errors.amount;
  return (
    <FormSheet
      title="Ceiling without a call"
      note={ticket.money.authorisedWords}
      act={cents === null ? 'Keep the ceiling' : `Keep ${format.money(cents)} as the ceiling`}
      command={command}
      shut={cents === null ? 'Write the amount.' : answerMissing(answer)}
      fieldsShown={['amount', ...ANSWER_FIELDS]}
      onDone={onDone}
      onGo={() =>
        cents !== null &&
        void command
          .send({ ticketId: ticket.ticketId, amount: cents, taxIn, ...answerInput(answer) })
          .then((kept) => kept && onDone())
      }
    >
      <Field label="Up to" inputMode="decimal" value={amount} onChange={setAmount} error={wrong} autoFocus />
      <Tick label="tax in" checked={taxIn} onChange={setTaxIn} />
      <AnswerFields customerId={ticket.customer.customerId} typed={answer} onChange={setAnswer} errors={errors} />
    </FormSheet>
  );
}
