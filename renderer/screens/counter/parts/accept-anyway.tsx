/** A yes of somebody not named, or above their limit: a lead says why it counts all the same. Nothing until it is refused. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import type { RequestRefused } from '../../../client/request-refused.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { useMay } from '../../../client/use-me.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { PinStrip } from '../../../kit/pin-strip.tsx';

const REFUSED = 'approvals/may-not-approve';

export function AcceptAnyway({
  refusal,
  answer,
  onDone,
}: {
  refusal: RequestRefused | null;
  /** The answer as it was refused. */
  answer: InputOf<App['approvals/record-answer']>;
  onDone?: (() => void) | undefined;
}) {
  const may = useMay();
  const accept = useAppCommand('approvals/accept-unnamed');
  const [why, setWhy] = useState('');
  if (refusal?.reply.code !== REFUSED) return null;
  if (!may.has('leads:decide')) return <p>A lead can take it as a yes, with a reason.</p>;
  return (
    <>
      <Field
        label="Why this answer counts all the same"
        value={why}
        onChange={setWhy}
        error={accept.error?.reply.fields?.why}
        autoFocus
      />
      <Button
        kind="out"
        working={accept.pending}
        shut={why.trim() === '' ? 'Write why.' : undefined}
        onPress={() => void accept.send({ ...answer, why }).then((kept) => kept && onDone?.())}
      >
        Lead takes this answer
      </Button>
      <PinStrip ask={accept} act="Lead takes this answer" />
      {!accept.wantsPin && <ErrorNote error={accept.error} fieldsShown={['why']} />}
    </>
  );
}
