/** A call, a message or a word at the counter, kept with the ticket. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { Choice } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import type { PanelProps } from '../ticket-shapes.ts';

type Means = 'call' | 'text' | 'email' | 'counter' | 'letter';
type About = 'ready' | 'answer' | 'money' | 'enquiry' | 'late' | 'other';

export function CallPanel({ ticket, onDone }: PanelProps) {
  const log = useAppCommand('tickets/log-contact');
  const [means, setMeans] = useState<Means>('call');
  const tell = ticket.next.some((one) => one.go === 'tell');
  const [about, setAbout] = useState<About>(tell ? 'ready' : 'other');
  const [number, setNumber] = useState(ticket.customer.phone ?? '');
  const [words, setWords] = useState('');
  const [reached, setReached] = useState<'yes' | 'no'>('yes');
  const { customer } = ticket;
  const errors = log.error?.reply.fields ?? {};
  return (
    <FormSheet
      title={tell ? 'Tell them it is ready' : 'Log a call'}
      note={customer.person?.name ?? customer.name}
      act="Keep this call"
      command={log}
      shut={words.trim() === '' ? 'Write what was said.' : undefined}
      fieldsShown={['words', 'numberOrAddress']}
      onDone={onDone}
      onGo={() =>
        void log
          .send({
            ticketId: ticket.ticketId,
            customerId: customer.customerId,
            personId: customer.person?.personId ?? null,
            means,
            numberOrAddress: number.trim() || null,
            about,
            words,
            reached: reached === 'yes',
          })
          .then((kept) => kept && onDone())
      }
    >
      <Choice<Means>
        label="How"
        options={[
          { value: 'call', words: 'Phone' },
          { value: 'text', words: 'Message' },
          { value: 'email', words: 'E-mail' },
          { value: 'counter', words: 'Counter' },
          { value: 'letter', words: 'Letter' },
        ]}
        value={means}
        onChange={setMeans}
      />
      <Choice<About>
        label="About"
        columns={3}
        options={[
          { value: 'ready', words: 'ready' },
          { value: 'answer', words: 'an answer' },
          { value: 'money', words: 'money' },
          { value: 'late', words: 'it is late' },
          { value: 'enquiry', words: 'a new job' },
          { value: 'other', words: 'other' },
        ]}
        value={about}
        onChange={setAbout}
      />
      <Field label="Number or address" value={number} onChange={setNumber} error={errors.numberOrAddress} />
      <Field label="What was said" value={words} onChange={setWords} error={errors.words} lines={3} autoFocus />
      <Choice
        label="Reached?"
        options={[
          { value: 'yes', words: 'yes' },
          { value: 'no', words: 'no, ring back' },
        ]}
        value={reached}
        onChange={setReached}
      />
    </FormSheet>
  );
}
