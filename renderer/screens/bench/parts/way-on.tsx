/** The way on that the host offers with a reason: a button that does it, a short form where something must be said, or words. */
import { type FormEvent, useState } from 'react';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { readingsAddress, tableAddress } from '../bench-addresses.ts';
import type { BenchCasting, Reason } from '../bench-casting.ts';
import css from './way-on.module.css';

type Way = NonNullable<Reason['wayOn']>;

export function WayOn({
  bench,
  wayOn,
  table,
}: {
  bench: BenchCasting;
  wayOn: Way;
  /** The table that holds what must be measured first, where the operation names one. */
  table?: string | null;
}) {
  switch (wayOn.request) {
    case 'readings/list-tables':
    case 'readings/get-table':
      return <Button href={table ? tableAddress(bench.tag, table) : readingsAddress(bench.tag)}>{wayOn.words}</Button>;
    case 'floor/tick-fact':
      return <TickFact wayOn={wayOn} />;
    case 'floor/remove-item':
      return <RemoveItem wayOn={wayOn} />;
    case 'castings/confirm-metal':
      return <ConfirmMetal castingId={bench.castingId} words={wayOn.words} />;
    case 'floor/close-hold':
      return <CloseHold wayOn={wayOn} />;
    default:
      return <b className={css.words}>{wayOn.words}</b>;
  }
}

/** The host wrote the input itself; only its words are ours. */
type InputFrom<C extends { send: (input: never) => unknown }> = Parameters<C['send']>[0];

function TickFact({ wayOn }: { wayOn: Way }) {
  const tick = useAppCommand('floor/tick-fact');
  return (
    <>
      <Button working={tick.pending} onPress={() => void tick.send(wayOn.input as InputFrom<typeof tick>)}>
        {wayOn.words}
      </Button>
      <ErrorNote error={tick.error} />
    </>
  );
}

function RemoveItem({ wayOn }: { wayOn: Way }) {
  const remove = useAppCommand('floor/remove-item');
  return (
    <>
      <Button working={remove.pending} onPress={() => void remove.send(wayOn.input as InputFrom<typeof remove>)}>
        {wayOn.words}
      </Button>
      <ErrorNote error={remove.error} />
    </>
  );
}

const METALS = [
  { value: 'iron_grey', words: 'Iron' },
  { value: 'steel', words: 'Steel' },
  { value: 'aluminium', words: 'Aluminium' },
  { value: 'other', words: 'Other' },
] as const;

/** A caustic wash eats aluminium: the hand that washes looks itself. */
function ConfirmMetal({ castingId, words }: { castingId: BenchCasting['castingId']; words: string }) {
  const [open, setOpen] = useState(false);
  const confirm = useAppCommand('castings/confirm-metal');
  if (!open) return <Button onPress={() => setOpen(true)}>{words}</Button>;
  return (
    <div className={css.form}>
      <p>
        Magnet on the bare casting in two places, away from seat inserts, liners, studs and steel cups. Both hold: iron.
      </p>
      <Choice
        label="What metal is it?"
        options={METALS}
        value={null}
        onChange={(material) => void confirm.send({ castingId, material, how: 'magnet' })}
      />
      <ErrorNote error={confirm.error} />
    </div>
  );
}

function CloseHold({ wayOn }: { wayOn: Way }) {
  const [open, setOpen] = useState(false);
  const [said, setSaid] = useState('');
  const close = useAppCommand('floor/close-hold');
  if (!open) return <Button onPress={() => setOpen(true)}>{wayOn.words}</Button>;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void close.send({ ...(wayOn.input as { holdId: number }), words: said });
  };
  return (
    <form className={css.form} onSubmit={submit}>
      <Field label="How was it settled?" value={said} onChange={setSaid} error={close.error?.reply.fields?.words} />
      <Button type="submit" working={close.pending}>
        {wayOn.words}
      </Button>
      <ErrorNote error={close.error} fieldsShown={['words']} />
    </form>
  );
}
