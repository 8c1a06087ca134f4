/** Changing a customer: only what was changed is sent, with the values seen. */
import { useState } from 'react';
import { useAppCommand } from '../../../client/use-app.ts';
import { Choice, Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { changesOf } from '../ticket/field-changes.ts';
import type { Customer } from './customer-shapes.ts';

const TEXTS = [
  ['name', 'Name'],
  ['shortName', 'Short name, prints on tags'],
  ['legalName', 'Legal name, prints on bills'],
  ['trade', 'Trade'],
  ['billingAddress', 'Bills to'],
  ['deliveryAddress', 'Delivered to'],
  ['route', 'Route'],
  ['notes', 'Notes'],
] as const;

export function CustomerForm({ customer, onDone }: { customer: Customer; onDone: () => void }) {
  const command = useAppCommand('customers/change-customer');
  const instruct = useAppCommand('customers/set-standing-instruction');
  const [seen] = useState(() => fieldsOf(customer));
  const [typed, setTyped] = useState(seen);
  const [instruction, setInstruction] = useState(customer.standingInstruction ?? '');
  const changes = changesOf(seen, typed);
  const newInstruction = instruction.trim() !== (customer.standingInstruction ?? '');
  const errors = command.error?.reply.fields ?? {};
  const save = async () => {
    let version = customer.version;
    if (Object.keys(changes).length > 0) {
      const kept = await command.send({
        customerId: customer.customerId,
        seenVersion: version,
        changes: changes as never,
      });
      if (!kept) return;
      version = kept.version;
    }
    if (newInstruction) {
      const kept = await instruct.send({
        customerId: customer.customerId,
        seenVersion: version,
        words: instruction.trim() || null,
      });
      if (!kept) return;
    }
    onDone();
  };
  return (
    <FormSheet
      title="Change"
      note={customer.name}
      act="Keep the changes"
      command={instruct.error ? instruct : command}
      shut={Object.keys(changes).length === 0 && !newInstruction ? 'Nothing is changed.' : undefined}
      fieldsShown={TEXTS.flatMap(([name]) => [`changes.${name}`, `changes.${name}.to`])}
      onDone={onDone}
      onGo={() => void save()}
    >
      {TEXTS.map(([name, label]) => (
        <Field
          key={name}
          label={label}
          value={typed[name] ?? ''}
          onChange={(text) => setTyped((before) => ({ ...before, [name]: text }))}
          error={errors[`changes.${name}.to`] ?? errors[`changes.${name}`]}
        />
      ))}
      <Choice
        label="Who may say yes"
        options={[
          { value: 'named', words: 'only who is named' },
          { value: 'anyone', words: 'anyone of theirs' },
        ]}
        value={typed.whoApproves}
        onChange={(whoApproves) => setTyped((before) => ({ ...before, whoApproves }))}
      />
      <Tick
        label="an order number before the bill"
        checked={typed.needsOrderNumber}
        onChange={(needsOrderNumber) => setTyped((before) => ({ ...before, needsOrderNumber }))}
      />
      <Field
        label="Standing instruction, signed once, printed each time"
        value={instruction}
        onChange={setInstruction}
        lines={2}
        error={instruct.error?.reply.fields?.words}
      />
    </FormSheet>
  );
}

const fieldsOf = (customer: Customer) => ({
  name: customer.name as string | null,
  shortName: customer.shortName as string | null,
  legalName: customer.legalName,
  trade: customer.trade,
  billingAddress: customer.billingAddress,
  deliveryAddress: customer.deliveryAddress,
  route: customer.route,
  notes: customer.notes,
  needsOrderNumber: customer.needsOrderNumber,
  whoApproves: customer.whoApproves,
});
