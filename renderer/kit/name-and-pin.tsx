/** Somebody's name and PIN for one act on this screen, without taking the page from whoever works on it. */
import { type FormEvent, useState } from 'react';
import { RequestRefused } from '../client/request-refused.ts';
import { useAppQuery, useClient } from '../client/use-app.ts';
import { Button } from './button.tsx';
import { Field } from './field.tsx';
import css from './name-and-pin.module.css';
import { ErrorNote } from './notice.tsx';

type Person = Readonly<{ person: number; pin: string }>;

export function NameAndPin({
  act,
  kind = 'go',
  shut,
  children,
  onSend,
  onClose,
}: {
  /** What the PIN opens: `Sign 30918`. */
  act: string;
  kind?: 'go' | 'out';
  /** Why it cannot be sent yet, besides name and PIN. */
  shut?: string | undefined;
  children?: React.ReactNode;
  /** @throws RequestRefused shown here; what was typed stays. */
  onSend: (who: Person) => Promise<void>;
  onClose?: (() => void) | undefined;
}) {
  const client = useClient();
  const names = useAppQuery('staff/list-sign-in-names', {});
  const [person, setPerson] = useState<number | null>(null);
  const [pin, setPin] = useState('');
  const [refused, setRefused] = useState<RequestRefused | null>(null);
  const [wrongPin, setWrongPin] = useState<string | undefined>();
  const [working, setWorking] = useState(false);

  async function send(who: Person) {
    const signedIn = await client.call('staff/sign-in', { staff: who.person, pin: who.pin });
    if (signedIn.signedIn) await onSend(who);
    else setWrongPin(signedIn.message);
  }
  async function submit(event: FormEvent) {
    event.preventDefault();
    if (person === null) return;
    setRefused(null);
    setWrongPin(undefined);
    setWorking(true);
    try {
      await send({ person, pin });
    } catch (error) {
      if (!(error instanceof RequestRefused)) throw error;
      setRefused(error);
    } finally {
      setPin('');
      setWorking(false);
    }
  }

  return (
    <form className={css.form} onSubmit={(event) => void submit(event)} aria-label={act}>
      {children}
      <fieldset className={css.names} aria-label="Who">
        {names.data?.people.map((one) => (
          <Button key={one.staff} pressed={one.staff === person} onPress={() => setPerson(one.staff)}>
            {one.name}
          </Button>
        ))}
      </fieldset>
      <div className={css.pin}>
        <Field
          label="PIN"
          type="password"
          inputMode="numeric"
          value={pin}
          onChange={(text) => setPin(text.replace(/\D/g, '').slice(0, 8))}
          error={wrongPin}
        />
        {onClose && <Button onPress={onClose}>Not now</Button>}
        <Button type="submit" kind={kind} working={working} shut={shut ?? missing(person, pin)}>
          {act}
        </Button>
      </div>
      <ErrorNote error={refused} />
    </form>
  );
}

function missing(person: number | null, pin: string): string | undefined {
  if (person === null) return 'Tap your name.';
  return pin.length < 4 ? 'Type your PIN.' : undefined;
}
