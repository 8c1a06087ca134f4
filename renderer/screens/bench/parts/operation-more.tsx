/** What is done to an operation now and then: left out with a reason, or done again with its cause. */
import { type FormEvent, useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { BenchOperation } from '../bench-casting.ts';
import css from './operation-more.module.css';

type Cause = InputOf<App['floor/redo-operation']>['cause'];
const CAUSES: readonly { value: Cause; words: string }[] = [
  { value: 'setup', words: 'set-up' },
  { value: 'tool_wear', words: 'tool wear' },
  { value: 'wrong_spec', words: 'wrong size asked' },
  { value: 'wrong_part', words: 'wrong part' },
  { value: 'damage', words: 'damage' },
  { value: 'hidden_defect', words: 'hidden defect' },
  { value: 'customer_change', words: 'customer changed it' },
];

/** Nothing for an operation that is signed or no longer counts. */
export function OperationMore({ row }: { row: BenchOperation }) {
  const [open, setOpen] = useState(false);
  const done = row.mark === 'done' && row.word === 'done';
  const left = (row.mark === 'open' || row.mark === 'uncovered') && row.running.length === 0;
  if (!done && !left) return null;
  if (!open) {
    return (
      <Button kind="out" onPress={() => setOpen(true)}>
        {done ? 'Do it again' : 'Not needed'}
      </Button>
    );
  }
  return done ? (
    <Redo row={row} onClose={() => setOpen(false)} />
  ) : (
    <NotNeeded row={row} onClose={() => setOpen(false)} />
  );
}

type FormProps = Readonly<{ row: BenchOperation; onClose: () => void }>;

function NotNeeded({ row, onClose }: FormProps) {
  const [why, setWhy] = useState('');
  const mark = useAppCommand('floor/mark-not-needed');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void mark.send({ operationId: row.id, seenVersion: row.version, why }).then((kept) => kept && onClose());
  };
  return (
    <form className={css.form} onSubmit={submit} aria-label={`${row.words} is not needed`}>
      <Field
        label="Why is it not needed?"
        value={why}
        onChange={setWhy}
        maxLength={240}
        error={mark.error?.reply.fields?.why}
      />
      <div className={css.foot}>
        <Button onPress={onClose}>Not now</Button>
        <Button type="submit" kind="out" working={mark.pending} shut={why.trim() === '' ? 'Write why.' : undefined}>
          Leave it out
        </Button>
      </div>
      <ErrorNote error={mark.error} fieldsShown={['why']} />
    </form>
  );
}

/** The first time and its readings stay; the second is a row of its own. */
function Redo({ row, onClose }: FormProps) {
  const redo = useAppCommand('floor/redo-operation');
  const [words, setWords] = useState('');
  return (
    <div className={css.form}>
      <Field label="What happened, if need be" value={words} onChange={setWords} maxLength={240} />
      <Choice
        label="Why is it done again?"
        options={CAUSES}
        value={null}
        columns={4}
        onChange={(cause) =>
          void redo
            .send({ operationId: row.id, seenVersion: row.version, cause, words: words.trim() === '' ? null : words })
            .then((kept) => kept && onClose())
        }
      />
      <div className={css.foot}>
        <Button onPress={onClose}>Not now</Button>
      </div>
      <ErrorNote error={redo.error} />
    </div>
  );
}
