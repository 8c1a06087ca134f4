/** An account on stop or over its limit: a lead or the owner lets this ticket's work go on, by name and reason. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import type { PanelProps } from '../ticket-shapes.ts';

export function AccountYesPanel({ ticket, onDone }: PanelProps) {
  const command = useAppCommand('tickets/give-account-yes');
  const [why, setWhy] = useState('');
  return (
    <FormSheet
      title="Let work go on"
      note={ticket.money.account.words}
      act="Let work go on"
      command={command}
      shut={why.trim() === '' ? 'Write why.' : undefined}
      fieldsShown={['why']}
      onDone={onDone}
      onGo={() => void command.send({ ticketId: ticket.ticketId, about: 'work', why }).then((kept) => kept && onDone())}
    >
      <Field
        label="Why it may go on"
        value={why}
        onChange={setWhy}
        error={command.error?.reply.fields?.why}
        lines={2}
        autoFocus
      />
    </FormSheet>
  );
}
