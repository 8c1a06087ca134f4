/** A limit for this job only, with where it comes from; it reads "not checked" until a second person has checked it. */
import { type FormEvent, useState } from 'react';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { judgedRow, limitFor, type Spot } from '../reading-view.ts';
import css from './job-limit.module.css';

type Figures = Readonly<{ low: string; target: string; high: string; source: string }>;
const NONE: Figures = { low: '', target: '', high: '', source: '' };

export function JobLimit({ spot }: { spot: Spot }) {
  const row = judgedRow(spot);
  const { sheet, column } = spot;
  const add = useAppCommand('limits/add-job-limit');
  const check = useAppCommand('limits/check-limit');
  const [typed, setTyped] = useState<Figures>(NONE);
  const { unit } = row;
  const limit = limitFor(row, column.side);
  if (unit === null) return null;

  const set = (change: Partial<Figures>) => setTyped((before) => ({ ...before, ...change }));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const input = {
      casting: sheet.casting.id,
      quantity: row.quantity,
      stage: row.stage,
      unit,
      low: typed.low,
      high: typed.high,
      target: typed.target,
      sourceWords: typed.source,
    };
    void add.send(input).then((kept) => kept && setTyped(NONE));
  };
  const empty = [typed.low, typed.high, typed.target].every((text) => text.trim() === '');

  return (
    <form className={css.limit} onSubmit={submit} aria-label={`Limit of ${row.words} for this job only`}>
      <h3>
        {row.words}, {row.unitMark}: limit for this job only
      </h3>
      <div className={css.fields}>
        <Field
          label="At least"
          inputMode="decimal"
          value={typed.low}
          onChange={(low) => set({ low })}
          error={add.error?.reply.fields?.low}
        />
        <Field
          label="Target"
          inputMode="decimal"
          value={typed.target}
          onChange={(target) => set({ target })}
          error={add.error?.reply.fields?.target}
        />
        <Field
          label="At most"
          inputMode="decimal"
          value={typed.high}
          onChange={(high) => set({ high })}
          error={add.error?.reply.fields?.high}
        />
      </div>
      <Field
        label="Where it comes from"
        value={typed.source}
        onChange={(source) => set({ source })}
        maxLength={240}
        error={add.error?.reply.fields?.sourceWords}
      />
      <div className={css.foot}>
        <Button type="submit" working={add.pending} shut={empty ? 'Type a figure.' : undefined}>
          Keep the limit
        </Button>
        {limit && !limit.checked && (
          <Button working={check.pending} onPress={() => void check.send({ limit: limit.id })}>
            I checked {limit.text || limit.targetText} with its source
          </Button>
        )}
      </div>
      <ErrorNote error={add.error} fieldsShown={['low', 'high', 'target', 'sourceWords']} />
      <ErrorNote error={check.error} />
    </form>
  );
}
