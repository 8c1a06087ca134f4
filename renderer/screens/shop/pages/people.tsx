/** Who works here, what each may do, and their PINs. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { PinStrip } from '../../../kit/pin-strip.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import css from './columns.module.css';

type Person = OutputOf<App['staff/list-staff']>['people'][number];
type Role = InputOf<App['staff/add-person']>['roles'][number];

const ROLES: readonly (readonly [Role, string])[] = [
  ['counter', 'counter: customers, tickets, prices, money'],
  ['machinist', 'machinist: bench, readings, no prices'],
  ['lead', 'lead: also decides, waives, signs'],
  ['books', 'books: invoices, accounts, credit notes'],
  ['owner', 'owner: everything, and this page'],
];

export function PeoplePage() {
  const [retiredToo, setRetiredToo] = useState(false);
  const { data, error } = useAppQuery('staff/list-staff', { retiredToo }, { keep: true });
  const [at, setAt] = useState<number | 'new' | null>(null);
  const format = useFormat();
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  const chosen = data.people.find((one) => one.id === at);
  return (
    <div className={css.three}>
      <Sheet title="Who works here" end={`${data.people.length}`} scroll>
        <Rows label="People">
          {data.people.map((one) => (
            <Row
              key={one.id}
              lead={<b>{one.initials}</b>}
              title={<b>{one.name}</b>}
              note={[one.jobWords, one.roles.join(', ')].filter(Boolean).join('. ')}
              end={one.retiredOn ? `left ${format.day(one.retiredOn)}` : one.hasPin ? '' : 'no PIN yet'}
              selected={one.id === at}
              onOpen={() => setAt(one.id)}
            />
          ))}
        </Rows>
        <SheetBody>
          <Tick label="also those who left" checked={retiredToo} onChange={setRetiredToo} />
        </SheetBody>
        <SheetFoot>
          <Button onPress={() => setAt('new')}>Another person</Button>
        </SheetFoot>
      </Sheet>
      {at === 'new' && <AddPerson onDone={() => setAt(null)} />}
      {chosen && <ChangePerson key={`${chosen.id}-${chosen.version}`} person={chosen} />}
      {chosen && <PinAndLeave key={chosen.id} person={chosen} />}
      {at === null && (
        <Sheet title="A person">
          <Empty>Choose somebody, or add another person.</Empty>
        </Sheet>
      )}
    </div>
  );
}

function RoleTicks({ roles, onRoles }: { roles: readonly Role[]; onRoles: (roles: readonly Role[]) => void }) {
  return (
    <fieldset>
      <legend>May do</legend>
      {ROLES.map(([role, words]) => (
        <Tick
          key={role}
          label={words}
          checked={roles.includes(role)}
          onChange={(on) => onRoles(on ? [...roles, role] : roles.filter((one) => one !== role))}
        />
      ))}
    </fieldset>
  );
}

const digits = (text: string): string => text.replace(/\D/g, '').slice(0, 8);

function AddPerson({ onDone }: { onDone: () => void }) {
  const command = useAppCommand('staff/add-person');
  const [name, setName] = useState('');
  const [initials, setInitials] = useState('');
  const [job, setJob] = useState('');
  const [pin, setPin] = useState('');
  const [roles, setRoles] = useState<readonly Role[]>(['machinist']);
  const fields = command.error?.reply.fields ?? {};
  const shut =
    name.trim() === '' || initials.trim() === ''
      ? 'Write name and initials.'
      : roles.length === 0
        ? 'Give at least one role.'
        : undefined;
  return (
    <FormSheet
      title="Another person"
      act={`Add ${name.trim() || 'this person'}`}
      command={command}
      shut={shut}
      fieldsShown={['name', 'initials', 'jobWords', 'pin']}
      onDone={onDone}
      onGo={() =>
        void command
          .send({ name, initials, jobWords: job.trim() || null, roles: [...roles], pin: pin === '' ? null : pin })
          .then((kept) => kept && onDone())
      }
    >
      <Field label="Name" value={name} onChange={setName} error={fields.name} autoFocus />
      <Field label="Initials" value={initials} onChange={setInitials} error={fields.initials} maxLength={4} />
      <Field label="What they do" value={job} onChange={setJob} error={fields.jobWords} />
      <Field
        label="PIN (can wait)"
        type="password"
        inputMode="numeric"
        value={pin}
        onChange={(text) => setPin(digits(text))}
        error={fields.pin}
        hint="4 to 8 digits, no run, not all alike"
      />
      <RoleTicks roles={roles} onRoles={setRoles} />
    </FormSheet>
  );
}

function ChangePerson({ person }: { person: Person }) {
  const command = useAppCommand('staff/change-roles');
  const [roles, setRoles] = useState<readonly Role[]>(person.roles);
  const [job, setJob] = useState(person.jobWords ?? '');
  const same = roles.length === person.roles.length && roles.every((one) => person.roles.includes(one));
  const shut =
    roles.length === 0
      ? 'Give at least one role.'
      : same && job === (person.jobWords ?? '')
        ? 'Nothing is changed.'
        : undefined;
  return (
    <FormSheet
      title={person.name}
      note={person.initials}
      act="Keep the changes"
      command={command}
      shut={shut}
      fieldsShown={['jobWords']}
      onDone={() => {
        setRoles(person.roles);
        setJob(person.jobWords ?? '');
      }}
      onGo={() =>
        void command.send({
          staff: person.id,
          seenVersion: person.version,
          roles: [...roles],
          jobWords: job.trim() || null,
        })
      }
    >
      <Field label="What they do" value={job} onChange={setJob} error={command.error?.reply.fields?.jobWords} />
      <RoleTicks roles={roles} onRoles={setRoles} />
    </FormSheet>
  );
}

function PinAndLeave({ person }: { person: Person }) {
  const setPinOf = useAppCommand('staff/set-pin');
  const retire = useAppCommand('staff/retire-person');
  const [pin, setPin] = useState('');
  const [done, setDone] = useState(false);
  return (
    <Sheet title="PIN and leaving" scroll>
      <SheetBody>
        <Field
          label={`New PIN of ${person.name}`}
          type="password"
          inputMode="numeric"
          value={pin}
          onChange={(text) => {
            setDone(false);
            setPin(digits(text));
          }}
          error={setPinOf.wantsPin ? undefined : setPinOf.error?.reply.fields?.pin}
          hint={done ? 'The new PIN stands.' : '4 to 8 digits, no run, not all alike'}
        />
        <PinStrip ask={setPinOf} act="Set the PIN" />
        {!setPinOf.wantsPin && <ErrorNote error={setPinOf.error} fieldsShown={['pin']} />}
        <Button
          working={setPinOf.pending}
          shut={pin.length < 4 ? 'Type the new PIN.' : undefined}
          onPress={() =>
            void setPinOf.send({ staff: person.id, pin }).then((kept) => {
              if (!kept) return;
              setPin('');
              setDone(true);
            })
          }
        >
          Set the PIN
        </Button>
        {person.retiredOn === null && (
          <>
            <p>Who leaves cannot sign in any more; all they did stays under their name.</p>
            <PinStrip ask={retire} act={`${person.name} no longer works here`} />
            {!retire.wantsPin && <ErrorNote error={retire.error} />}
            <Button
              kind="out"
              working={retire.pending}
              onPress={() => void retire.send({ staff: person.id, seenVersion: person.version })}
            >
              {person.name} no longer works here
            </Button>
          </>
        )}
      </SheetBody>
    </Sheet>
  );
}
