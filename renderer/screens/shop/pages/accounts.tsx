/** Customers' terms: the kinds of terms the shop gives, whom they stand with, stops and exemptions. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery, useClient } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { customerAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { readCount } from '../../../kit/count.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetFoot, SheetHead } from '../../../kit/sheet.tsx';
import { Hold } from '../../../kit/state.tsx';
import { AccountTerms } from '../parts/account-terms.tsx';
import { AddExemption } from '../parts/add-exemption.tsx';
import type { Account } from '../shop-shapes.ts';
import css from './columns.module.css';

type TermsKind = InputOf<App['customers/add-terms']>['kind'];

export function AccountsPage() {
  const [text, setText] = useState('');
  const [at, setAt] = useState<number | null>(null);
  const found = useAppQuery('customers/find-customer', { text: text.slice(0, 200), limit: 50 }, { keep: true });
  const chosen = useAppQuery('customers/get-customer', { customerId: at ?? 1 }, { enabled: at !== null });
  return (
    <div className={css.three}>
      <Sheet title="Customers" note="terms, stops, exemptions" scroll>
        <div className={css.filter}>
          <Field label="Look for: name or telephone" value={text} onChange={setText} />
        </div>
        <ErrorNote error={found.error} />
        {found.data?.customers.length === 0 && (
          <Empty>
            {text.trim() === '' ? 'Write a name: the customers found stand here.' : 'Nobody is called that.'}
          </Empty>
        )}
        <Rows label="Customers">
          {found.data?.customers.map((one) => (
            <Row
              key={one.customerId}
              title={<b>{one.name}</b>}
              note={one.phone}
              end={one.onStop ? <Hold>on stop</Hold> : one.termsWords}
              selected={one.customerId === at}
              onOpen={() => setAt(one.customerId)}
            />
          ))}
        </Rows>
      </Sheet>
      {at !== null && chosen.data ? (
        <>
          <AccountTerms key={`${at}-${chosen.data.version}`} account={chosen.data} onDone={() => setAt(null)} />
          <Exemptions account={chosen.data} />
        </>
      ) : (
        <TermsList />
      )}
    </div>
  );
}

function Exemptions({ account }: { account: Account }) {
  const format = useFormat();
  const client = useClient();
  const end = useAppCommand('customers/end-exemption');
  const today = format.local(client.now()).day;
  return (
    <Sheet title="Tax exemptions" note={account.name} scroll>
      {account.exemptions.length === 0 && <Empty>Certificates stand here with their days.</Empty>}
      <Rows label="Tax exemptions">
        {account.exemptions.map((one) => (
          <Row
            key={one.exemptionId}
            title={one.sentence}
            note={one.words}
            end={
              one.inForce && one.ended === null ? (
                <Button
                  working={end.pending}
                  label={`Ends today: certificate ${one.certificateNo}`}
                  onPress={() => void end.send({ exemptionId: one.exemptionId, on: today })}
                >
                  Ends today
                </Button>
              ) : (
                'not in force'
              )
            }
          />
        ))}
      </Rows>
      <ErrorNote error={end.error} />
      <SheetHead title="Another certificate" />
      <AddExemption key={account.customerId} account={account} today={today} />
      <SheetFoot>
        <Button href={customerAddress(account.customerId)}>Whole customer</Button>
      </SheetFoot>
    </Sheet>
  );
}

function TermsList() {
  const { data, error } = useAppQuery('customers/list-terms', {});
  const add = useAppCommand('customers/add-terms');
  const [code, setCode] = useState('');
  const [words, setWords] = useState('');
  const [kind, setKind] = useState<TermsKind>('net');
  const [days, setDays] = useState('30');
  const fields = add.error?.reply.fields ?? {};
  const count = kind === 'on_receipt' ? 0 : readCount(days, 365);
  const clear = () => {
    setCode('');
    setWords('');
  };
  return (
    <>
      <Sheet title="Terms the shop gives" scroll>
        <ErrorNote error={error} />
        <Rows label="Terms">
          {data?.terms.map((one) => (
            <Row
              key={one.termsId}
              title={<b>{one.words}</b>}
              note={one.code}
              end={one.days > 0 ? `${one.days} days` : ''}
            />
          ))}
        </Rows>
        <SheetBody>
          <p>Choose a customer at the left to set their terms, limit, stop and exemptions.</p>
        </SheetBody>
      </Sheet>
      <FormSheet
        title="More terms"
        act="Add the terms"
        command={add}
        shut={
          code.trim() === '' || words.trim() === ''
            ? 'Write the code and the words.'
            : count === null
              ? 'Write how many days.'
              : undefined
        }
        fieldsShown={['code', 'words', 'days']}
        onDone={clear}
        onGo={() => count !== null && void add.send({ code, words, kind, days: count }).then((kept) => kept && clear())}
      >
        <Field label="Code, for example net30" value={code} onChange={setCode} error={fields.code} />
        <Field label="In words, they print" value={words} onChange={setWords} error={fields.words} />
        <Choice<TermsKind>
          label="Due"
          options={[
            { value: 'on_receipt', words: 'on receipt' },
            { value: 'net', words: 'after days' },
            { value: 'end_of_month', words: 'month end' },
          ]}
          value={kind}
          onChange={setKind}
        />
        {kind !== 'on_receipt' && (
          <Field label="Days" inputMode="numeric" value={days} onChange={setDays} error={fields.days} />
        )}
      </FormSheet>
    </>
  );
}
