/** Terms, limit, discounts, and putting an account on stop: for books and the owner. */
import { useState } from 'react';
import { readMoney } from '#core/kernel/format.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import type { Customer } from './customer-shapes.ts';

export function AccountForm({ customer, onDone }: { customer: Customer; onDone: () => void }) {
  const format = useFormat();
  const set = useAppCommand('customers/set-terms');
  const terms = useAppQuery('customers/list-terms', {}).data?.terms ?? [];
  const [text, setText] = useState(customer.terms.words);
  const [code, setCode] = useState(customer.terms.code);
  const [limit, setLimit] = useState(customer.creditLimit === null ? '' : format.money(customer.creditLimit));
  const cents = readMoney(limit, format.settings);
  const wrong = limit.trim() !== '' && cents === null ? 'Write an amount, for example 6000.00.' : undefined;
  return (
    <FormSheet
      title="Terms and stop"
      note={customer.name}
      act="Keep the terms"
      command={set}
      shut={wrong}
      onDone={onDone}
      onGo={() =>
        void set
          .send({
            customerId: customer.customerId,
            seenVersion: customer.version,
            terms: code,
            creditLimit: limit.trim() === '' ? null : cents,
          })
          .then((kept) => kept && onDone())
      }
    >
      <Suggest
        label="Terms"
        text={text}
        onText={setText}
        options={terms.map((one) => ({ key: one.termsId, words: one.words, value: one }))}
        onPick={(one) => {
          setText(one.words);
          setCode(one.code);
        }}
      />
      <Field label="Limit (empty: none)" inputMode="decimal" value={limit} onChange={setLimit} error={wrong} />
      <StopForm customer={customer} onDone={onDone} />
    </FormSheet>
  );
}

function StopForm({ customer, onDone }: { customer: Customer; onDone: () => void }) {
  const stop = useAppCommand('customers/put-on-stop');
  const lift = useAppCommand('customers/lift-stop');
  const [why, setWhy] = useState('');
  const stopped = customer.onStopAt !== null;
  const command = stopped ? lift : stop;
  return (
    <>
      <Field
        label={stopped ? 'Why the stop is lifted' : 'Why the account is put on stop'}
        value={why}
        onChange={setWhy}
        error={command.error?.reply.fields?.why}
      />
      <ErrorNote error={command.error} fieldsShown={['why']} />
      <Button
        kind="out"
        working={command.pending}
        shut={why.trim() === '' ? 'Write why.' : undefined}
        onPress={() =>
          void command
            .send({ customerId: customer.customerId, seenVersion: customer.version, why })
            .then((kept) => kept && onDone())
        }
      >
        {stopped ? 'Lift the stop' : 'Put on stop'}
      </Button>
    </>
  );
}
