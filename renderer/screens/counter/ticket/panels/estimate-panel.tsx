/** Sending an estimate: a numbered revision with every live line; its prices are frozen from then on. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import type { PanelProps } from '../ticket-shapes.ts';

export function EstimatePanel({ ticket, onDone }: PanelProps) {
  const format = useFormat();
  const command = useAppCommand('pricing/send-estimate');
  const [until, setUntil] = useState('');
  const [words, setWords] = useState('');
  const { now, estimate } = ticket.money;
  const errors = command.error?.reply.fields ?? {};
  return (
    <FormSheet
      title="Send an estimate"
      note={estimate ? `revision ${estimate.revision} was ${format.money(estimate.beforeTax)}` : 'the first'}
      act={`Send ${format.money(now.beforeTax)} before tax`}
      command={command}
      shut={ticket.lines.length === 0 ? 'Nothing is asked for yet.' : undefined}
      fieldsShown={['validUntil', 'words']}
      onDone={onDone}
      onGo={() =>
        void command
          .send({ ticketId: ticket.ticketId, validUntil: until || null, words: words.trim() || null })
          .then((sent) => sent && onDone())
      }
    >
      <p>
        {format.money(now.beforeTax)} before tax, {format.money(now.tax)} tax, <b>{format.moneySign(now.total)}</b> in
        all.
      </p>
      <Field
        label="Good until (empty: the usual days)"
        type="date"
        value={until}
        onChange={setUntil}
        error={errors.validUntil}
      />
      <Field label="Words on it" value={words} onChange={setWords} error={errors.words} lines={3} autoFocus />
    </FormSheet>
  );
}
