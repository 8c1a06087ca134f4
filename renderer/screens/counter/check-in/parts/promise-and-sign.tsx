/** The promise, suggested and changeable, and how the customer signs for what was left. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { isDay } from '#core/kernel/days.ts';
import { RequestRefused } from '../../../../client/request-refused.ts';
import { putFile } from '../../../../client/transport.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Button } from '../../../../kit/button.tsx';
import { Choice, Tick } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { Signature } from '../../../../kit/signature.tsx';
import type { SetTyped } from '../hooks/use-check-in.ts';
import type { Troubles } from '../request.ts';
import type { CheckInTyped } from '../typed.ts';
import css from './promise-and-sign.module.css';

type Suggestion = OutputOf<App['promises/get-suggestion']>;

export function PromiseFields({
  typed,
  set,
  suggestion,
  troubles,
}: {
  typed: CheckInTyped;
  set: SetTyped;
  suggestion: Suggestion | undefined;
  troubles: Troubles;
}) {
  const format = useFormat();
  const change = (changes: Partial<CheckInTyped['promise']>) =>
    set((before) => ({ ...before, promise: { ...before.promise, byHand: true, ...changes } }));
  return (
    <div className={css.promise}>
      <Field
        label="Promise, day"
        type="date"
        value={typed.promise.day}
        onChange={(day) => change({ day })}
        error={troubles.promise}
        hint={isDay(typed.promise.day) ? format.day(typed.promise.day) : undefined}
      />
      <Field
        label="at"
        placeholder="17:00"
        inputMode="numeric"
        value={typed.promise.time}
        onChange={(time) => change({ time })}
      />
      <div className={css.soonest}>
        <span>Soonest</span>
        <b>{suggestion?.earliest?.words ?? (suggestion ? 'depends' : '')}</b>
        <small>{suggestion?.bottleneck?.words ?? suggestion?.dependsOn.join('. ') ?? ''}</small>
      </div>
      <Field
        label="It depends on"
        placeholder="if no cracks are found"
        value={typed.promise.dependsOn}
        onChange={(dependsOn) => change({ dependsOn })}
        error={troubles.dependsOn}
      />
      {typed.promise.byHand && suggestion?.comfortable && (
        <Button onPress={() => change({ byHand: false })}>Take {suggestion.comfortable.words}</Button>
      )}
      <Tick label="RUSH" checked={typed.rush} onChange={(rush) => set((before) => ({ ...before, rush }))} />
    </div>
  );
}

export function SignFields({ typed, set, troubles }: { typed: CheckInTyped; set: SetTyped; troubles: Troubles }) {
  const [error, setError] = useState<RequestRefused | null>(null);
  const keep = async (png: Blob | null) => {
    setError(null);
    if (!png) {
      set((before) => ({ ...before, signatureFile: null }));
      return;
    }
    try {
      const { sha256 } = await putFile(png);
      set((before) => ({ ...before, signatureFile: sha256 }));
    } catch (thrown) {
      if (thrown instanceof RequestRefused) setError(thrown);
      else throw thrown;
    }
  };
  return (
    <div className={css.sign}>
      <Choice
        label="Signed for what was left"
        options={[
          { value: 'drawn', words: 'here' },
          { value: 'on_paper', words: 'on paper' },
          { value: 'left_unsigned', words: 'left unsigned' },
        ]}
        value={typed.signed}
        onChange={(signed) => set((before) => ({ ...before, signed }))}
        error={troubles.signed ?? troubles.signatureFile}
      />
      {typed.signed === 'drawn' && (
        <Signature
          label={`Signature of ${typed.customer.said || typed.customer.name}`}
          onSigned={(png) => void keep(png)}
        />
      )}
      <ErrorNote error={error} />
    </div>
  );
}
