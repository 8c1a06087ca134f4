/** Goods that go although money is open: a lead or the owner says why, with name and PIN. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { newKey } from '../../../../client/client.ts';
import { useClient } from '../../../../client/use-app.ts';
import { Field } from '../../../../kit/field.tsx';
import { NameAndPin } from '../../../../kit/name-and-pin.tsx';

export function UnpaidForm({
  act,
  shut,
  input,
  onDone,
  onClose,
}: {
  act: string;
  shut: string | undefined;
  input: InputOf<App['racks/release-goods']>;
  onDone: (released: Readonly<{ releaseId: number; words: string }>) => void;
  onClose: () => void;
}) {
  const client = useClient();
  const [reason, setReason] = useState('');
  return (
    <NameAndPin
      act={act}
      shut={shut ?? (reason.trim() === '' ? 'Write the reason.' : undefined)}
      onClose={onClose}
      onSend={async ({ person, pin }) => {
        onDone(await client.call('racks/release-unpaid', { ...input, reason }, { as: person, pin, key: newKey() }));
      }}
    >
      <Field
        label="Why it may go unpaid; a lead or the owner decides"
        value={reason}
        onChange={setReason}
        maxLength={240}
      />
    </NameAndPin>
  );
}
