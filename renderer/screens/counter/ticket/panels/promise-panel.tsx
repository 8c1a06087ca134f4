/** A promise, or a new one beside it with its reason. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { isDay } from '#core/kernel/days.ts';
import { useAppCommand, useAppQuery } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Button } from '../../../../kit/button.tsx';
import { Choice } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import { readMinute } from '../../check-in/request.ts';
import type { PanelProps } from '../ticket-shapes.ts';

type Suggestion = OutputOf<App['promises/get-suggestion']>;
type Reason = 'first' | 'parts' | 'answer' | 'machine' | 'found_more' | 'customer' | 'other';

export function PromisePanel({ ticket, onDone }: PanelProps) {
  const format = useFormat();
  const command = useAppCommand('promises/set-promise');
  const suggestion = useAppQuery(
    'promises/get-suggestion',
    { ticketId: ticket.ticketId },
    { ticket: ticket.ticketId },
  ).data;
  const [day, setDay] = useState<string>(ticket.promise?.day ?? '');
  const [time, setTime] = useState(ticket.promise ? format.time(ticket.promise.minute) : '');
  const [dependsOn, setDependsOn] = useState('');
  const [reason, setReason] = useState<Reason | null>(ticket.promise ? null : 'first');
  const [why, setWhy] = useState('');
  const errors = command.error?.reply.fields ?? {};
  const wrongTime = time !== '' && readMinute(time) === null ? 'Write the time, for example 17:00.' : undefined;
  const shut = !isDay(day) ? 'Choose the day.' : reason === null ? 'Choose why it changes.' : wrongTime;
  return (
    <FormSheet
      title={ticket.promise ? 'Change the promise' : 'Promise a day'}
      note={ticket.promise ? `now ${ticket.promise.words}` : undefined}
      act={isDay(day) ? `Promise ${format.day(day)} ${time}` : 'Promise'}
      command={command}
      shut={shut}
      fieldsShown={['promise.day', 'promise.minute', 'why', 'reason']}
      onDone={onDone}
      onGo={() =>
        isDay(day) &&
        reason !== null &&
        void command
          .send({
            ticketId: ticket.ticketId,
            promise: { day, minute: readMinute(time), dependsOn: dependsOn.trim() || null },
            reason,
            why: why.trim() || null,
            seenPromiseId: ticket.promise?.promiseId ?? null,
          })
          .then((kept) => kept && onDone())
      }
    >
      <Suggested
        suggestion={suggestion}
        onTake={(at) => {
          setDay(at.day);
          setTime(format.time(at.minute));
        }}
      />
      <Field label="Day" type="date" value={day} onChange={setDay} error={errors['promise.day']} />
      <Field
        label="At (empty: the usual hour)"
        value={time}
        onChange={setTime}
        error={wrongTime ?? errors['promise.minute']}
      />
      <Field label="It depends on" value={dependsOn} onChange={setDependsOn} placeholder="if no cracks are found" />
      {ticket.promise && (
        <Choice<Reason>
          label="Why it changes"
          columns={3}
          options={[
            { value: 'parts', words: 'parts late' },
            { value: 'answer', words: 'answer late' },
            { value: 'machine', words: 'machine' },
            { value: 'found_more', words: 'found more' },
            { value: 'customer', words: 'customer asks' },
            { value: 'other', words: 'other' },
          ]}
          value={reason}
          onChange={setReason}
          error={errors.reason}
        />
      )}
      <Field label="In words" value={why} onChange={setWhy} error={errors.why} />
    </FormSheet>
  );
}

function Suggested({
  suggestion,
  onTake,
}: {
  suggestion: Suggestion | undefined;
  onTake: (at: Readonly<{ day: string; minute: number }>) => void;
}) {
  const comfortable = suggestion?.comfortable;
  return (
    <>
      {comfortable && <Button onPress={() => onTake(comfortable)}>Take {comfortable.words}</Button>}
      <p>
        Soonest {suggestion?.earliest?.words ?? 'not known'}
        {suggestion?.bottleneck && `, ${suggestion.bottleneck.words}`}
        {suggestion && suggestion.dependsOn.length > 0 && `. ${suggestion.dependsOn.join('. ')}`}
      </p>
    </>
  );
}
