/** Terms, limit, discounts and price list of one customer, and the stop. */
import { useState } from 'react';
import { formatMoney, readMoney } from '#core/kernel/format.ts';
import type { Cents } from '#core/kernel/units.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import type { Account } from '../shop-shapes.ts';

export function AccountTerms({ account, onDone }: { account: Account; onDone: () => void }) {
  const format = useFormat();
  const { settings } = format;
  const set = useAppCommand('customers/set-terms');
  const terms = useAppQuery('customers/list-terms', {}).data?.terms ?? [];
  const percent = (bp: number) => formatMoney(bp as Cents, settings);
  const [code, setCode] = useState(account.terms.code);
  const [text, setText] = useState(account.terms.words);
  const [limit, setLimit] = useState(account.creditLimit === null ? '' : format.money(account.creditLimit));
  const [labour, setLabour] = useState(percent(account.labourDiscount));
  const [parts, setParts] = useState(percent(account.partsDiscount));
  const [list, setList] = useState(account.priceList);
  const [statement, setStatement] = useState(account.statement);
  const cents = limit.trim() === '' ? null : readMoney(limit, settings);
  const labourBp = readMoney(labour.replace('%', ''), settings);
  const partsBp = readMoney(parts.replace('%', ''), settings);
  const wrongLimit = limit.trim() !== '' && cents === null ? 'Write an amount, for example 6000.00.' : undefined;
  const wrong = (bp: number | null) => (bp === null ? 'Write a percentage, for example 7.5.' : undefined);
  const fields = set.error?.reply.fields ?? {};
  const send = async () => {
    if (labourBp === null || partsBp === null) return;
    await set.send({
      customerId: account.customerId,
      seenVersion: account.version,
      terms: code,
      creditLimit: cents,
      labourDiscount: labourBp,
      partsDiscount: partsBp,
      priceList: list,
      statement,
    });
  };
  return (
    <FormSheet
      title={account.name}
      note="terms and stop"
      act="Keep the terms"
      command={set}
      shut={wrongLimit ?? wrong(labourBp) ?? wrong(partsBp)}
      fieldsShown={['terms', 'creditLimit', 'labourDiscount', 'partsDiscount', 'priceList']}
      onDone={onDone}
      onGo={() => void send()}
    >
      <Suggest
        label="Terms"
        text={text}
        onText={setText}
        options={terms
          .filter((one) => one.code !== code)
          .map((one) => ({ key: one.termsId, words: one.words, value: one }))}
        onPick={(one) => {
          setText(one.words);
          setCode(one.code);
        }}
        error={fields.terms}
      />
      <Field
        label="Limit (empty: none)"
        inputMode="decimal"
        value={limit}
        onChange={setLimit}
        error={wrongLimit ?? fields.creditLimit}
      />
      <Field
        label="Discount on labour"
        inputMode="decimal"
        end="%"
        value={labour}
        onChange={setLabour}
        error={wrong(labourBp) ?? fields.labourDiscount}
      />
      <Field
        label="Discount on parts"
        inputMode="decimal"
        end="%"
        value={parts}
        onChange={setParts}
        error={wrong(partsBp) ?? fields.partsDiscount}
      />
      <Field label="Price list" value={list} onChange={setList} error={fields.priceList} />
      <Choice
        label="Statement"
        options={[
          { value: 'mail', words: 'by post' },
          { value: 'file', words: 'as a file' },
          { value: 'none', words: 'none' },
        ]}
        value={statement}
        onChange={setStatement}
      />
      <Stop account={account} />
    </FormSheet>
  );
}

function Stop({ account }: { account: Account }) {
  const stop = useAppCommand('customers/put-on-stop');
  const lift = useAppCommand('customers/lift-stop');
  const [why, setWhy] = useState('');
  const stopped = account.onStopAt !== null;
  const command = stopped ? lift : stop;
  return (
    <>
      {account.stopWords && <Notice kind="ask">{account.stopWords}</Notice>}
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
            .send({ customerId: account.customerId, seenVersion: account.version, why })
            .then((kept) => kept && setWhy(''))
        }
      >
        {stopped ? 'Lift the stop' : 'Put on stop'}
      </Button>
    </>
  );
}
