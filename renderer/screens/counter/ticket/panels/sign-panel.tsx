/** The customer signs the list of pieces and conditions, here or on paper; or the ticket says that nobody did. */
import { useState } from 'react';
import { RequestRefused } from '../../../../client/request-refused.ts';
import { putFile } from '../../../../client/transport.ts';
import { useAppCommand } from '../../../../client/use-app.ts';
import { Choice } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { Signature } from '../../../../kit/signature.tsx';
import type { PanelProps } from '../ticket-shapes.ts';

type How = 'drawn' | 'on_paper' | 'left_unsigned';

export function SignPanel({ ticket, onDone }: PanelProps) {
  const command = useAppCommand('intake/sign-claim');
  const [how, setHow] = useState<How | null>(null);
  const [by, setBy] = useState(ticket.customer.person?.name ?? ticket.customer.name);
  const [file, setFile] = useState<string | null>(null);
  const [refused, setRefused] = useState<RequestRefused | null>(null);
  const errors = command.error?.reply.fields ?? {};
  const keep = async (png: Blob | null) => {
    setRefused(null);
    try {
      setFile(png ? (await putFile(png)).sha256 : null);
    } catch (thrown) {
      if (!(thrown instanceof RequestRefused)) throw thrown;
      setRefused(thrown);
    }
  };
  const missing = how === null ? 'Choose how.' : how === 'drawn' && file === null ? 'Sign in the field.' : undefined;
  return (
    <FormSheet
      title="Signed for what was left"
      note="the conditions lock then"
      act={how === 'left_unsigned' ? 'Leave it unsigned' : 'Keep the signature'}
      command={command}
      shut={missing}
      fieldsShown={['signedBy', 'how', 'signatureFile']}
      onDone={onDone}
      onGo={() =>
        how !== null &&
        void command
          .send({
            ticketId: ticket.ticketId,
            how,
            signedBy: how === 'left_unsigned' ? null : by.trim() || null,
            signatureFile: how === 'drawn' && file !== null ? { sha256: file } : null,
          })
          .then((kept) => kept && onDone())
      }
    >
      <Choice<How>
        label="How"
        options={[
          { value: 'drawn', words: 'here' },
          { value: 'on_paper', words: 'on paper' },
          { value: 'left_unsigned', words: 'left unsigned' },
        ]}
        value={how}
        onChange={setHow}
        error={errors.how}
      />
      {how !== 'left_unsigned' && <Field label="Signed by" value={by} onChange={setBy} error={errors.signedBy} />}
      {how === 'drawn' && <Signature label={`Signature of ${by}`} onSigned={(png) => void keep(png)} />}
      {how === 'left_unsigned' && (
        <p>The conditions lock at the first operation, the customer gets a copy, and the ticket says so.</p>
      )}
      <ErrorNote error={refused} />
    </FormSheet>
  );
}
