/** A lead lets a rule pass with a reason, on this tablet, without taking the work from whoever holds it. */
import { useState } from 'react';
import { newKey } from '../../../client/client.ts';
import { useClient } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { NameAndPin } from '../../../kit/name-and-pin.tsx';
import type { BenchOperation, Reason } from '../bench-casting.ts';

export function LeadStarts({ row, reason }: { row: BenchOperation; reason: Reason }) {
  const client = useClient();
  const [open, setOpen] = useState(false);
  const [why, setWhy] = useState('');
  const { rule } = reason;
  if (!rule) return null;
  if (!open) {
    return (
      <Button kind="out" onPress={() => setOpen(true)}>
        Lead starts it
      </Button>
    );
  }
  return (
    <NameAndPin
      act="Lead starts it"
      kind="out"
      shut={why.trim() === '' ? 'Write the reason.' : undefined}
      onClose={() => setOpen(false)}
      onSend={async ({ person, pin }) => {
        const input = { operationId: row.id, seenVersion: row.version, ruleId: rule.id, reason: why };
        await client.call('floor/waive-rule', input, { as: person, pin, key: newKey() });
        setOpen(false);
      }}
    >
      <Field label="Reason, printed on traveller and sign-off" value={why} onChange={setWhy} maxLength={240} />
    </NameAndPin>
  );
}
