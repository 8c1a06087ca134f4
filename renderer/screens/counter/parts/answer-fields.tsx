/** Who answered, how, by which number and in which words: an answer counts only with all of it. */
import { useState } from 'react';
import { useAppQuery } from '../../../client/use-app.ts';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { Suggest } from '../../../kit/suggest.tsx';

export type Means = 'signature' | 'text' | 'email' | 'phone' | 'counter';

export type AnswerTyped = Readonly<{
  personId: number | null;
  said: string;
  means: Means;
  numberCalled: string;
  words: string;
}>;

/** Nothing answered yet; the person of the ticket is the one to ring. */
export const startAnswer = (
  person: Readonly<{ personId: number; name: string }> | null,
  phone: string | null,
): AnswerTyped => ({
  personId: person?.personId ?? null,
  said: person?.name ?? '',
  means: 'phone',
  numberCalled: phone ?? '',
  words: '',
});

/** What a request takes of it. */
export const answerInput = (typed: AnswerTyped) => ({
  personId: typed.personId,
  saidBy: typed.said.trim() || null,
  means: typed.means,
  numberCalled: typed.means === 'phone' ? typed.numberCalled.trim() || null : null,
  words: typed.words,
});

/** Why it cannot be kept yet, or undefined. */
export function answerMissing(typed: AnswerTyped): string | undefined {
  if (typed.said.trim() === '') return 'Write who answered.';
  if (typed.means === 'phone' && typed.numberCalled.trim() === '') return 'Write the number you called.';
  return typed.words.trim() === '' ? 'Write their words.' : undefined;
}

export function AnswerFields({
  customerId,
  typed,
  onChange,
  errors,
  phones = true,
}: {
  customerId: number;
  typed: AnswerTyped;
  onChange: (typed: AnswerTyped) => void;
  errors: Readonly<Record<string, string>>;
  phones?: boolean;
}) {
  const { data } = useAppQuery('customers/get-customer', { customerId });
  const [touched, setTouched] = useState(false);
  const set = (changes: Partial<AnswerTyped>) => onChange({ ...typed, ...changes });
  const persons = data?.persons ?? [];
  const person = persons.find((one) => one.personId === typed.personId);
  return (
    <>
      <Choice<Means>
        label="How they answered"
        columns={3}
        options={[
          { value: 'phone', words: 'Phone' },
          { value: 'text', words: 'Message' },
          { value: 'email', words: 'E-mail' },
          { value: 'counter', words: 'At the counter' },
          { value: 'signature', words: 'Signed' },
        ]}
        value={typed.means}
        onChange={(means) => set({ means })}
        error={errors.means}
      />
      <Suggest
        label="Who answered"
        text={typed.said}
        onText={(said) => {
          setTouched(true);
          set({ said, personId: null });
        }}
        options={persons
          .filter((one) => !touched || one.name.toLowerCase().includes(typed.said.toLowerCase()))
          .map((one) => ({ key: one.personId, words: one.name, note: one.approveWords, value: one }))}
        onPick={(one) =>
          set({
            said: one.name,
            personId: one.personId,
            numberCalled: one.contacts.find((contact) => contact.kind === 'phone')?.value ?? typed.numberCalled,
          })
        }
        error={errors.saidBy ?? errors.personId}
        hint={person?.approveWords}
      />
      {phones && typed.means === 'phone' && (
        <Field
          label="Number called"
          type="tel"
          value={typed.numberCalled}
          onChange={(numberCalled) => set({ numberCalled })}
          error={errors.numberCalled}
        />
      )}
      <Field
        label="In their words"
        value={typed.words}
        onChange={(words) => set({ words })}
        error={errors.words}
        lines={3}
      />
    </>
  );
}

/** Fields whose refusal stands beside them. */
export const ANSWER_FIELDS = ['means', 'saidBy', 'personId', 'numberCalled', 'words'];
