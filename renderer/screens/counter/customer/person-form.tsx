/** A person of a customer: may they say yes, up to what, may they collect, and how to reach them. */
import { useState } from 'react';
import { readMoney } from '#core/kernel/format.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice, Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import type { Customer, CustomerPerson } from './customer-shapes.ts';
import { addPersonInput, changePersonInput, type PersonTyped, startPerson } from './person-typed.ts';

type FormProps = Readonly<{ customer: Customer; person: CustomerPerson | undefined; onDone: () => void }>;

export function PersonForm({ customer, person, onDone }: FormProps) {
  const format = useFormat();
  const add = useAppCommand('customers/add-person');
  const change = useAppCommand('customers/change-person');
  const [typed, setTyped] = useState(() =>
    startPerson(person, person?.approveLimit ? format.money(person.approveLimit) : ''),
  );
  const set = (changes: Partial<PersonTyped>) => setTyped((before) => ({ ...before, ...changes }));
  const command = person ? change : add;
  const limit = readMoney(typed.limit, format.settings);
  const wrongLimit = typed.limit.trim() !== '' && limit === null ? 'Write an amount, for example 600.00.' : undefined;
  const errors = command.error?.reply.fields ?? {};
  const save = async () => {
    const kept = person
      ? await change.send(changePersonInput(typed, person, limit))
      : await add.send({ customerId: customer.customerId, person: addPersonInput(typed, limit) });
    if (kept) onDone();
  };
  return (
    <FormSheet
      title={person ? person.name : 'Another person'}
      note={customer.name}
      act="Keep this person"
      command={command}
      shut={typed.name.trim() === '' ? 'Write the name.' : wrongLimit}
      fieldsShown={['person.name', 'changes.name', 'changes.name.to']}
      onDone={onDone}
      onGo={() => void save()}
    >
      <Field
        label="Name"
        value={typed.name}
        onChange={(name) => set({ name })}
        error={errors['person.name'] ?? errors['changes.name.to'] ?? errors['changes.name']}
        autoFocus
      />
      <Field label="What they do there" value={typed.role} onChange={(role) => set({ role })} />
      <Field label="Telephone" type="tel" value={typed.phone} onChange={(phone) => set({ phone })} />
      <Tick label="may say yes to work" checked={typed.mayApprove} onChange={(mayApprove) => set({ mayApprove })} />
      {typed.mayApprove && (
        <Field
          label="up to, before tax (empty: any amount)"
          inputMode="decimal"
          value={typed.limit}
          onChange={(text) => set({ limit: text })}
          error={wrongLimit}
        />
      )}
      <Tick label="may collect" checked={typed.mayCollect} onChange={(mayCollect) => set({ mayCollect })} />
      <Choice<PersonTyped['prefers']>
        label="Reach them by"
        options={[
          { value: 'call', words: 'call' },
          { value: 'text', words: 'message' },
          { value: 'email', words: 'e-mail' },
        ]}
        value={typed.prefers}
        onChange={(prefers) => set({ prefers })}
      />
      {person && (
        <Button
          kind="out"
          working={change.pending}
          onPress={() =>
            void change
              .send({ personId: person.personId, seenVersion: person.version, changes: {}, retire: true })
              .then((kept) => kept && onDone())
          }
        >
          {person.name} no longer speaks for them
        </Button>
      )}
    </FormSheet>
  );
}
