/** Small work over the counter: a name, words and a price; a tag only if it stays. */
import { useState } from 'react';
import { useLocation } from 'wouter';
import { readMoney } from '#core/kernel/format.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { invoiceAddress, ticketAddress } from '../../../kit/addresses.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { Choice, Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import { PageName, Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import { TypeField } from '../check-in/parts/casting-identity.tsx';
import { emptyCasting } from '../check-in/typed.ts';
import css from './quick-screen.module.css';
import { EMPTY_QUICK, isQuick, type QuickTyped, quickInput, quickMissing } from './quick-typed.ts';

export function QuickScreen() {
  const format = useFormat();
  const [, go] = useLocation();
  const [typed, set] = useTyped<QuickTyped>('quick', EMPTY_QUICK, isQuick);
  const [casting, setCasting] = useState(emptyCasting('c1'));
  const command = useAppCommand('tickets/quick-ticket');
  const change = (changes: Partial<QuickTyped>) => set((before) => ({ ...before, ...changes }));
  const asked = typed.customerId === null && typed.name.trim() !== '';
  const found = useAppQuery(
    'customers/find-customer',
    { text: typed.name.slice(0, 200), limit: 8 },
    { enabled: asked, keep: true },
  );
  const price = readMoney(typed.price, format.settings);
  const missing = quickMissing(typed, price, casting);
  const errors = command.error?.reply.fields ?? {};
  const keep = async () => {
    if (missing || price === null) return;
    const made = await command.send(quickInput(typed, price, casting));
    if (!made) return;
    set(() => EMPTY_QUICK);
    go((typed.stays ? ticketAddress(made.number) : invoiceAddress(made.number)).slice(1));
  };
  useAct('go', () => void keep());
  useAct('leave', () => go('/counter'));
  return (
    <div className={css.page}>
      <PageName>Quick ticket</PageName>
      <Sheet title="Quick ticket" note="a flywheel, one stud, a part over the counter" scroll>
        <SheetBody>
          <Suggest
            label="Customer: name or telephone"
            text={typed.name}
            onText={(name) => change({ name, customerId: null })}
            options={(asked ? (found.data?.customers ?? []) : []).map((line) => ({
              key: line.customerId,
              words: line.name,
              note: line.phone,
              value: line,
            }))}
            onPick={(line) => change({ customerId: line.customerId, name: line.name })}
            error={errors['customer.add.name']}
            autoFocus
          />
          <Field
            label="What is done or sold"
            value={typed.words}
            onChange={(words) => change({ words })}
            error={errors.words}
          />
          <div className={css.two}>
            <Field
              label="How many"
              inputMode="numeric"
              value={typed.quantity}
              onChange={(quantity) => change({ quantity })}
            />
            <Field
              label="Price of one, before tax"
              inputMode="decimal"
              value={typed.price}
              onChange={(text) => change({ price: text })}
              error={errors.price}
            />
          </div>
          <Choice
            label="It is"
            options={[
              { value: 'labour_repair', words: 'repair' },
              { value: 'labour_fabrication', words: 'making' },
              { value: 'part', words: 'a part' },
              { value: 'fee', words: 'a fee' },
            ]}
            value={typed.taxClass}
            onChange={(taxClass) => change({ taxClass })}
          />
          <Tick label="it stays here: give it a tag" checked={typed.stays} onChange={(stays) => change({ stays })} />
          {typed.stays && (
            <>
              <TypeField
                casting={casting}
                change={(changes) => setCasting((before) => ({ ...before, ...changes }))}
                troubles={{}}
              />
              <Choice
                label="Metal"
                options={[
                  { value: 'iron_grey', words: 'Iron' },
                  { value: 'aluminium', words: 'Aluminium' },
                  { value: 'steel', words: 'Steel' },
                  { value: 'other', words: 'Other' },
                  { value: 'not_known', words: 'Not known' },
                ]}
                value={casting.material === 'iron_ductile' ? 'iron_grey' : casting.material}
                onChange={(material) => setCasting((before) => ({ ...before, material }))}
              />
            </>
          )}
          <ErrorNote error={command.error} fieldsShown={['customer.add.name', 'words', 'price']} />
        </SheetBody>
        <SheetFoot>
          <GoButton keys={keysOf('go')} working={command.pending} shut={missing} onPress={() => void keep()}>
            {typed.stays ? 'Tag it' : 'Keep it, then the bill'}
          </GoButton>
          <Button keys={keysOf('leave')} href="#/counter">
            Set aside
          </Button>
        </SheetFoot>
      </Sheet>
    </div>
  );
}
