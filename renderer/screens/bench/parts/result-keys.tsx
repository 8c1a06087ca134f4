/** What an operation finds once, given where it is done: the result of a crack check as one touch, other words in a line. */
import { type FormEvent, useState } from 'react';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import type { BenchCasting, BenchOperation } from '../bench-casting.ts';
import css from './result-keys.module.css';

type Result = BenchOperation['results'][number];

export function ResultKeys({ bench, row }: { bench: BenchCasting; row: BenchOperation }) {
  return row.results.map((result) => (
    <OneResult key={result.quantity} casting={bench.castingId} operation={row.id} result={result} />
  ));
}

function OneResult({
  casting,
  operation,
  result,
}: {
  casting: BenchCasting['castingId'];
  operation: BenchOperation['id'];
  result: Result;
}) {
  const add = useAppCommand('readings/add-readings');
  const supersede = useAppCommand('readings/supersede-reading');
  const [text, setText] = useState('');
  const working = add.pending || supersede.pending;
  const give = async (typed: string) => {
    if (typed === result.value || typed.trim() === '') return;
    const kept =
      result.reading === null
        ? await add.send({ casting, operation, rows: [{ quantity: result.quantity, stage: 'after', typed }] })
        : await supersede.send({ reading: result.reading, typed });
    if (kept) setText('');
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void give(text);
  };
  return (
    <fieldset className={css.result}>
      <legend>{result.words}</legend>
      {result.choices.map((choice) => (
        <Button key={choice} pressed={choice === result.value} working={working} onPress={() => void give(choice)}>
          {choice}
        </Button>
      ))}
      {result.choices.length === 0 && (
        <form onSubmit={submit}>
          <Field
            label={result.words}
            quiet
            value={text}
            placeholder={result.value}
            onChange={setText}
            maxLength={240}
          />
          <Button type="submit" working={working}>
            Keep
          </Button>
        </form>
      )}
      <ErrorNote error={add.error ?? supersede.error} />
    </fieldset>
  );
}
