/** A tax certificate of a customer, with the days it stands. */
import { useState } from 'react';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { SheetBody } from '../../../kit/sheet.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import type { Account } from '../shop-shapes.ts';

export function AddExemption({ account, today }: { account: Account; today: string }) {
  const command = useAppCommand('customers/add-exemption');
  const taxes = useAppQuery('rates/list-rates', {}).data?.taxes ?? [];
  const [tax, setTax] = useState('');
  const [number, setNumber] = useState('');
  const [words, setWords] = useState('');
  const [from, setFrom] = useState(today);
  const [until, setUntil] = useState('');
  const fields = command.error?.reply.fields ?? {};
  const codes = [...new Map(taxes.map((one) => [one.code, one])).values()];
  const send = async () => {
    const kept = await command.send({
      customerId: account.customerId,
      taxCode: tax.trim(),
      certificateNo: number,
      words: words.trim() || null,
      from,
      until: until || null,
    });
    if (!kept) return;
    setNumber('');
    setWords('');
  };
  return (
    <SheetBody>
      <Suggest
        label="Tax"
        text={tax}
        onText={setTax}
        options={codes.map((one) => ({ key: one.id, words: one.code, note: one.words, value: one.code }))}
        onPick={setTax}
        error={fields.taxCode}
      />
      <Field label="Number of the certificate" value={number} onChange={setNumber} error={fields.certificateNo} />
      <Field label="What it says" value={words} onChange={setWords} error={fields.words} />
      <Field label="From" type="date" value={from} onChange={setFrom} error={fields.from} />
      <Field label="Until (empty: no end)" type="date" value={until} onChange={setUntil} error={fields.until} />
      <ErrorNote error={command.error} fieldsShown={['taxCode', 'certificateNo', 'words', 'from', 'until']} />
      <Button
        working={command.pending}
        shut={tax.trim() === '' || number.trim() === '' ? 'Write the tax and the number.' : undefined}
        onPress={() => void send()}
      >
        Add the certificate
      </Button>
    </SheetBody>
  );
}
