/** Signing in: tap a name, then the PIN. Somebody already signed in here today needs the tap only. */
import { type FormEvent, useState } from 'react';
import { useAppCommand, useAppQuery, useClient } from '../client/use-app.ts';
import { useFace } from '../client/use-shop.ts';
import { Button, GoButton } from '../kit/button.tsx';
import { classes } from '../kit/class-names.ts';
import { Field } from '../kit/field.tsx';
import { ErrorNote } from '../kit/notice.tsx';
import { Waiting } from '../kit/pane.tsx';
import { moveInRows } from '../kit/rows.tsx';
import { rememberPerson } from './person-memory.ts';
import css from './sign-in.module.css';

type Name = Readonly<{ staff: number; name: string; initials: string; signedInHere: boolean }>;

export function SignIn({ onIn }: { onIn?: (() => void) | undefined }) {
  const client = useClient();
  const { data, error, isPending } = useAppQuery('staff/list-sign-in-names', {});
  const [chosen, setChosen] = useState<Name | null>(null);
  const goOn = (person: number) => {
    rememberPerson(person);
    client.actAs(person);
    onIn?.();
  };
  if (isPending) return <Waiting />;
  if (error) return <ErrorNote error={error} />;
  return (
    <div className={css.sheet}>
      <h1>Who works here now?</h1>
      <fieldset className={css.names} onKeyDown={moveInRows} aria-label="People">
        {data.people.map((person) => (
          <button
            key={person.staff}
            type="button"
            data-row=""
            className={classes(css.person, chosen?.staff === person.staff && css.chosen)}
            aria-pressed={chosen?.staff === person.staff}
            onClick={() => (person.signedInHere ? goOn(person.staff) : setChosen(person))}
          >
            <b>{person.initials}</b>
            <span>
              {person.name}
              {person.signedInHere && <small>signed in here today</small>}
            </span>
          </button>
        ))}
      </fieldset>
      {chosen && <PinPad key={chosen.staff} person={chosen} onIn={goOn} />}
    </div>
  );
}

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'];

function PinPad({ person, onIn }: { person: Name; onIn: (person: number) => void }) {
  const digits = useFace().data?.pinDigits ?? 6;
  const signIn = useAppCommand('staff/sign-in');
  const [pin, setPin] = useState('');
  const [refusal, setRefusal] = useState<string | undefined>();
  const change = (text: string) => {
    setPin(text.replace(/\D/g, '').slice(0, 8));
    setRefusal(undefined);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const answer = await signIn.send({ staff: person.staff, pin });
    if (!answer) return;
    if (answer.signedIn) onIn(answer.me.staff);
    else {
      setRefusal(answer.message);
      setPin('');
    }
  };
  return (
    <form className={css.pin} onSubmit={submit}>
      <Field
        label={`PIN of ${person.name}`}
        type="password"
        inputMode="numeric"
        value={pin}
        onChange={change}
        error={refusal ?? signIn.error?.reply.fields?.pin}
        autoFocus
      />
      <div className={css.pad}>
        {DIGITS.map((digit) => (
          <Button key={digit} onPress={() => change(pin + digit)}>
            {digit}
          </Button>
        ))}
        <Button onPress={() => change(pin.slice(0, -1))}>Back one</Button>
      </div>
      <ErrorNote error={signIn.error} fieldsShown={['pin']} />
      <GoButton type="submit" working={signIn.pending} shut={pin.length < 4 ? `Type ${digits} digits.` : undefined}>
        Sign in
      </GoButton>
    </form>
  );
}
