/** Who brings it and what they said: the first strip of the page. */
import { useState } from 'react';
import { useAppQuery } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Choice, Tick } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { Suggest } from '../../../../kit/suggest.tsx';
import type { SetTyped } from '../hooks/use-check-in.ts';
import type { Troubles } from '../request.ts';
import type { CheckInTyped } from '../typed.ts';
import css from './who-fields.module.css';

type Props = Readonly<{ typed: CheckInTyped; set: SetTyped; troubles: Troubles }>;

export function WhoFields({ typed, set, troubles }: Props) {
  return (
    <section className={css.strip} aria-label="Who brings it">
      <div className={css.row}>
        <CustomerField typed={typed} set={set} troubles={troubles} />
        <SaidByField typed={typed} set={set} />
        <Field
          label="Their order no."
          value={typed.orderNumber}
          onChange={(orderNumber) => set((before) => ({ ...before, orderNumber }))}
          error={troubles.orderNumber}
        />
        <Field
          label="Ceiling without a call"
          value={typed.ceiling}
          inputMode="decimal"
          onChange={(ceiling) => set((before) => ({ ...before, ceiling }))}
          error={troubles.ceiling}
          end={
            <label className={css.tax}>
              <input
                type="checkbox"
                checked={typed.ceilingTaxIn}
                onChange={(event) => set((before) => ({ ...before, ceilingTaxIn: event.target.checked }))}
              />
              tax in
            </label>
          }
        />
        <Field
          label="Deposit"
          value={typed.deposit}
          inputMode="decimal"
          onChange={(deposit) => set((before) => ({ ...before, deposit }))}
          error={troubles.deposit}
        />
      </div>
      <SaidFields typed={typed} set={set} troubles={troubles} />
    </section>
  );
}

function CustomerField({ typed, set, troubles }: Props) {
  const { customer } = typed;
  const asked = customer.name.trim().length > 0 && customer.id === null;
  const found = useAppQuery(
    'customers/find-customer',
    { text: customer.name.slice(0, 200), limit: 8 },
    { enabled: asked, keep: true },
  );
  const known = useKnownCustomer(customer.id);
  const change = (changes: Partial<CheckInTyped['customer']>) =>
    set((before) => ({ ...before, customer: { ...before.customer, ...changes } }));
  return (
    <>
      <Suggest
        label="Customer: name or telephone"
        text={customer.name}
        onText={(name) => change({ name, id: null, personId: null })}
        options={(asked ? (found.data?.customers ?? []) : []).map((line) => ({
          key: line.customerId,
          words: line.name,
          note: `${line.phone} ${line.termsWords}`,
          value: line,
        }))}
        onPick={(line) =>
          change({
            id: line.customerId,
            name: line.name,
            phone: line.phone,
            kind: line.kind,
            personId: line.personId,
            said: line.person ?? '',
          })
        }
        error={troubles.customer}
        hint={
          known ??
          (asked && found.data?.customers.length === 0
            ? 'Nobody here by that name: made new when checked in.'
            : undefined)
        }
        autoFocus={!typed.at}
      />
      {customer.id === null ? (
        <div className={css.newCustomer}>
          <Field label="Telephone" type="tel" value={customer.phone} onChange={(phone) => change({ phone })} />
          <Choice
            label="Kind"
            options={[
              { value: 'retail', words: 'retail' },
              { value: 'trade', words: 'trade' },
            ]}
            value={customer.kind}
            onChange={(kind) => change({ kind })}
          />
        </div>
      ) : (
        <Field label="Telephone" type="tel" value={customer.phone} onChange={(phone) => change({ phone })} />
      )}
    </>
  );
}

/** Terms, stop and standing instruction of a customer we know, as one line. */
function useKnownCustomer(id: number | null): React.ReactNode {
  const format = useFormat();
  const account = useAppQuery('customers/get-account', { customerId: id ?? 1 }, { enabled: id !== null });
  if (id === null || !account.data) return undefined;
  const { words, owed, standingInstruction } = account.data;
  return [words, owed > 0 ? `owes ${format.money(owed)}` : '', standingInstruction ?? ''].filter(Boolean).join('. ');
}

function SaidByField({ typed, set }: Omit<Props, 'troubles'>) {
  const { customer } = typed;
  const page = useAppQuery(
    'customers/get-customer',
    { customerId: customer.id ?? 1 },
    { enabled: customer.id !== null },
  );
  const [touched, setTouched] = useState(false);
  const persons = customer.id === null ? [] : (page.data?.persons ?? []);
  const person = persons.find((one) => one.personId === customer.personId);
  const change = (changes: Partial<CheckInTyped['customer']>) =>
    set((before) => ({ ...before, customer: { ...before.customer, ...changes } }));
  return (
    <div className={css.said}>
      <Suggest
        label="Said by"
        text={customer.said}
        onText={(said) => {
          setTouched(true);
          change({ said, personId: null });
        }}
        options={persons
          .filter((one) => !touched || one.name.toLowerCase().includes(customer.said.toLowerCase()))
          .map((one) => ({ key: one.personId, words: one.name, note: one.approveWords, value: one }))}
        onPick={(one) => change({ said: one.name, personId: one.personId })}
        hint={person?.approveWords}
      />
      {customer.id === null && (
        <Tick label="may approve" checked={customer.mayApprove} onChange={(mayApprove) => change({ mayApprove })} />
      )}
    </div>
  );
}

function SaidFields({ typed, set, troubles }: Props) {
  return (
    <div className={css.row2}>
      <Field
        label="What they said"
        placeholder="overheated, machined before, what happened"
        value={typed.history}
        onChange={(history) => set((before) => ({ ...before, history }))}
        error={troubles.historyWords}
      />
      <Field
        label="Use"
        placeholder="road, boat, farm"
        value={typed.use}
        onChange={(use) => set((before) => ({ ...before, use }))}
        error={troubles.useWords}
      />
      <Field
        label="Fuel"
        value={typed.fuel}
        onChange={(fuel) => set((before) => ({ ...before, fuel }))}
        error={troubles.fuelWords}
      />
      <Field
        label="Valve lift"
        placeholder=".480 in"
        value={typed.lift}
        onChange={(lift) => set((before) => ({ ...before, lift }))}
        error={troubles.valveLift}
      />
      <Choice
        label="Gasket"
        options={[
          { value: 'mls', words: 'MLS' },
          { value: 'composition', words: 'compos.' },
          { value: 'other', words: 'other' },
          { value: 'not_asked', words: 'not asked' },
        ]}
        value={typed.gasket}
        onChange={(gasket) => set((before) => ({ ...before, gasket }))}
      />
      <Choice
        label="Old parts"
        options={[
          { value: 'return', words: 'return' },
          { value: 'discard', words: 'discard' },
          { value: 'not_asked', words: 'not asked' },
        ]}
        value={typed.oldParts}
        onChange={(oldParts) => set((before) => ({ ...before, oldParts }))}
      />
    </div>
  );
}
