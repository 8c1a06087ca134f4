/** The person's PIN asked again, in the page beside the act: nothing typed is covered or lost. */
import { type FormEvent, useState } from 'react';
import type { RequestRefused } from '../client/request-refused.ts';
import { Button } from './button.tsx';
import { Field } from './field.tsx';
import css from './pin-strip.module.css';

/** What the strip needs of a command; any `useAppCommand` fits. */
export type AsksPin = Readonly<{
  wantsPin: boolean;
  pending: boolean;
  error: RequestRefused | null;
  givePin(pin: string): Promise<void>;
  dropPin(): void;
}>;

/** Nothing while no PIN is asked. `act` is what the PIN opens: `Release 6 pieces`. */
export function PinStrip({ ask, act }: { ask: AsksPin; act: string }) {
  const [pin, setPin] = useState('');
  if (!ask.wantsPin) return null;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void ask.givePin(pin).then(() => setPin(''));
  };
  return (
    <form className={css.strip} onSubmit={submit} aria-label={`PIN for: ${act}`}>
      <Field
        label="Your PIN, once more"
        type="password"
        inputMode="numeric"
        autoComplete="off"
        value={pin}
        onChange={setPin}
        error={ask.error?.reply.message}
        autoFocus
      />
      <Button type="submit" kind="go" working={ask.pending} shut={pin === '' ? 'Type your PIN.' : undefined}>
        {act}
      </Button>
      <Button onPress={ask.dropPin}>Not now</Button>
    </form>
  );
}
