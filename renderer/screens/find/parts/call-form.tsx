/** The call is logged without leaving find: what it was about and what was said. */
import { useState } from 'react';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { Found } from '../found.ts';
import css from './call-form.module.css';

type About = 'ready' | 'answer' | 'money' | 'enquiry' | 'late' | 'other';

const ABOUT: readonly Readonly<{ value: About; words: string }>[] = [
  { value: 'ready', words: 'is it ready' },
  { value: 'answer', words: 'an answer' },
  { value: 'money', words: 'money' },
  { value: 'enquiry', words: 'a new job' },
  { value: 'late', words: 'it is late' },
  { value: 'other', words: 'other' },
];

export function CallForm({
  call,
  about: subject,
  onDone,
}: {
  call: NonNullable<Found['call']>;
  /** "ticket 10482". */
  about: string;
  onDone: () => void;
}) {
  const log = useAppCommand('tickets/log-contact');
  const [about, setAbout] = useState<About>('ready');
  const [words, setWords] = useState('');
  const [ringBack, setRingBack] = useState<'said' | 'back'>('said');
  const keep = async () => {
    const kept = await log.send({
      ticketId: call.ticketId,
      customerId: call.customerId,
      personId: call.personId,
      means: 'call',
      numberOrAddress: call.number,
      about,
      words,
      reached: ringBack === 'said',
    });
    if (kept) onDone();
  };
  useAct('go', () => void keep());
  useAct('leave', onDone);
  return (
    <section className={css.call} aria-label={`Call about ${subject}`}>
      <Choice label={`Call about ${subject}: it was`} options={ABOUT} value={about} onChange={setAbout} />
      <Field
        label="What was said"
        value={words}
        onChange={setWords}
        error={log.error?.reply.fields?.words}
        lines={2}
        autoFocus
      />
      <Choice
        label="And now"
        options={[
          { value: 'said', words: 'settled' },
          { value: 'back', words: 'we ring back' },
        ]}
        value={ringBack}
        onChange={setRingBack}
      />
      <ErrorNote error={log.error} fieldsShown={['words']} />
      <div className={css.acts}>
        <GoButton
          keys={keysOf('go')}
          working={log.pending}
          onPress={() => void keep()}
          shut={words.trim() === '' ? 'Write what was said.' : undefined}
        >
          Keep this call
        </GoButton>
        <Button onPress={onDone}>Not now</Button>
      </div>
    </section>
  );
}
