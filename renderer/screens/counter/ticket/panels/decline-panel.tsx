/** The job is not done after all. The goods still leave by the racks. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import type { PanelProps } from '../ticket-shapes.ts';

export function DeclinePanel({ ticket, onDone }: PanelProps) {
  const command = useAppCommand('tickets/decline-ticket');
  const [why, setWhy] = useState('');
  return (
    <FormSheet
      title={`Decline ticket ${ticket.number}`}
      note="its number is not used again"
      act={`Decline ticket ${ticket.number}`}
      command={command}
      shut={why.trim() === '' ? 'Write why.' : undefined}
      fieldsShown={['why']}
      onDone={onDone}
      onGo={() =>
        void command
          .send({ ticketId: ticket.ticketId, seenVersion: ticket.version, why })
          .then((kept) => kept && onDone())
      }
    >
      <Field label="Why" value={why} onChange={setWhy} error={command.error?.reply.fields?.why} lines={2} autoFocus />
    </FormSheet>
  );
}
