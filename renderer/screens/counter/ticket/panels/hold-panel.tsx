/** Something stands still: why, on what, and who is on it. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { Choice } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import type { PanelProps, TicketCasting } from '../ticket-shapes.ts';

const REASONS = [
  { value: 'customer_answer', words: "customer's answer" },
  { value: 'parts', words: 'parts' },
  { value: 'customer_parts', words: "customer's parts" },
  { value: 'money', words: 'money' },
  { value: 'crack_or_scrap', words: 'crack or scrap' },
  { value: 'sublet', words: 'sublet' },
  { value: 'machine_down', words: 'machine down' },
  { value: 'spec_question', words: 'size question' },
  { value: 'identity', words: 'identity in doubt' },
] as const;
type Reason = (typeof REASONS)[number]['value'];

export function HoldPanel({ ticket, casting, onDone }: PanelProps & Readonly<{ casting: TicketCasting | undefined }>) {
  const command = useAppCommand('floor/open-hold');
  const [reason, setReason] = useState<Reason | null>(null);
  const [on, setOn] = useState<'ticket' | 'casting'>('ticket');
  const [words, setWords] = useState('');
  const [followUp, setFollowUp] = useState('');
  const errors = command.error?.reply.fields ?? {};
  return (
    <FormSheet
      title="Hold"
      act="Hold it"
      command={command}
      shut={reason === null ? 'Choose what it waits for.' : undefined}
      fieldsShown={['words', 'reason', 'followUpOn']}
      onDone={onDone}
      onGo={() =>
        reason !== null &&
        void command
          .send({
            reason,
            words: words.trim() || null,
            ...(followUp !== '' && { followUpOn: followUp }),
            ...(on === 'casting' && casting ? { casting: casting.castingId } : { ticket: ticket.ticketId }),
          })
          .then((kept) => kept && onDone())
      }
    >
      <Choice
        label="It waits for"
        columns={3}
        options={REASONS}
        value={reason}
        onChange={setReason}
        error={errors.reason}
      />
      {casting && (
        <Choice
          label="On"
          options={[
            { value: 'ticket', words: 'the whole ticket' },
            { value: 'casting', words: `${casting.tagNo} alone` },
          ]}
          value={on}
          onChange={setOn}
        />
      )}
      <Field label="In words" value={words} onChange={setWords} error={errors.words} lines={2} />
      <Field
        label="Look again on (empty: the next open day)"
        type="date"
        value={followUp}
        onChange={setFollowUp}
        error={errors.followUpOn}
      />
    </FormSheet>
  );
}
