/** A limit of a casting type, of its engine, or of the shop: figures as printed, and where they come from. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import { QUANTITIES } from '#core/catalogue/compute/quantities.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import css from '../pages/columns.module.css';
import type { CastingType } from './arrival-typed.ts';

type LimitInput = InputOf<App['limits/add-limit']>;
type UnitName = LimitInput['unit'];
type For = 'casting_type' | 'engine_type' | 'shop';

type LimitTyped = Readonly<{
  quantity: string;
  stage: 'before' | 'after';
  side: 'I' | 'E' | 'any';
  low: string;
  target: string;
  high: string;
  unit: string;
  sourceWords: string;
  secondUnitText: string;
  for: For;
}>;

const EMPTY: LimitTyped = {
  quantity: '',
  stage: 'before',
  side: 'any',
  low: '',
  target: '',
  high: '',
  unit: 'in',
  sourceWords: '',
  secondUnitText: '',
  for: 'casting_type',
};
const isLimit = (value: unknown): value is LimitTyped =>
  typeof value === 'object' && value !== null && Object.keys(EMPTY).every((key) => key in value);

/** Why it cannot be sent yet, or undefined. */
function missingOf(typed: LimitTyped, known: boolean): string | undefined {
  if (!known) return 'Choose what is measured.';
  if (typed.low.trim() === '' && typed.high.trim() === '' && typed.target.trim() === '') return 'Write a figure.';
  return typed.sourceWords.trim() === '' ? 'Write where the figure comes from.' : undefined;
}

export function LimitForm({ type }: { type: CastingType }) {
  const command = useAppCommand('limits/add-limit');
  const [typed, set] = useTyped<LimitTyped>(`limit-${type.id}`, EMPTY, isLimit);
  const [warnings, setWarnings] = useState<readonly string[] | null>(null);
  const change = (changes: Partial<LimitTyped>) => set((before) => ({ ...before, ...changes }));
  const looked = typed.quantity.trim().toLowerCase();
  const quantity = QUANTITIES.find((one) => one.words.toLowerCase() === looked);
  const fields = command.error?.reply.fields ?? {};
  const send = async () => {
    if (!quantity) return;
    const kept = await command.send({
      for: typed.for,
      castingType: typed.for === 'casting_type' ? type.id : null,
      engineType: typed.for === 'engine_type' ? (type.engineType?.id ?? null) : null,
      quantity: quantity.code,
      stage: typed.stage,
      side: typed.side,
      low: typed.low.trim() || null,
      high: typed.high.trim() || null,
      target: typed.target.trim() || null,
      unit: typed.unit.trim() as UnitName,
      sourceWords: typed.sourceWords,
      secondUnitText: typed.secondUnitText.trim() || null,
    });
    if (!kept) return;
    setWarnings(kept.warnings);
    set((before) => ({ ...EMPTY, for: before.for, unit: before.unit, sourceWords: before.sourceWords }));
  };
  return (
    <FormSheet
      title="Limits"
      note={type.code}
      act="Add the limit"
      command={command}
      shut={missingOf(typed, quantity !== undefined)}
      fieldsShown={['quantity', 'low', 'high', 'target', 'unit', 'sourceWords', 'secondUnitText']}
      onDone={() => set(() => EMPTY)}
      onGo={() => void send()}
    >
      <LimitsKept castingType={type.id} />
      <p>No figure is ever filled in by the program: write it as the source prints it, and name the source.</p>
      <Choice<For>
        label="It is for"
        options={
          type.engineType
            ? [
                { value: 'casting_type', words: 'this type' },
                { value: 'engine_type', words: 'its engine' },
                { value: 'shop', words: 'every casting' },
              ]
            : [
                { value: 'casting_type', words: 'this type' },
                { value: 'shop', words: 'every casting' },
              ]
        }
        value={typed.for}
        onChange={(next) => change({ for: next })}
      />
      <Suggest
        label="What is measured"
        text={typed.quantity}
        onText={(text) => change({ quantity: text })}
        options={QUANTITIES.filter((one) => one !== quantity && one.words.toLowerCase().includes(looked))
          .slice(0, 8)
          .map((one) => ({ key: one.code, words: one.words, value: one.words }))}
        onPick={(words) => change({ quantity: words })}
        error={fields.quantity}
      />
      <Choice
        quiet
        label="Stage"
        options={[
          { value: 'before', words: 'as found' },
          { value: 'after', words: 'after the work' },
        ]}
        value={typed.stage}
        onChange={(stage) => change({ stage })}
      />
      <Choice
        quiet
        label="Side"
        options={[
          { value: 'any', words: 'any side' },
          { value: 'I', words: 'intake' },
          { value: 'E', words: 'exhaust' },
        ]}
        value={typed.side}
        onChange={(side) => change({ side })}
      />
      <div className={css.fields}>
        <Field label="At least" value={typed.low} onChange={(low) => change({ low })} error={fields.low} />
        <Field label="At most" value={typed.high} onChange={(high) => change({ high })} error={fields.high} />
        <Field label="Target" value={typed.target} onChange={(target) => change({ target })} error={fields.target} />
        <Field
          label="Unit"
          value={typed.unit}
          onChange={(unit) => change({ unit })}
          error={fields.unit}
          hint="in, mm, lbf, N"
        />
      </div>
      <Field
        label="Where the figure comes from"
        value={typed.sourceWords}
        onChange={(sourceWords) => change({ sourceWords })}
        error={fields.sourceWords}
      />
      <Field
        label="The same in the other unit, as printed (can be empty)"
        value={typed.secondUnitText}
        onChange={(secondUnitText) => change({ secondUnitText })}
        error={fields.secondUnitText}
      />
      {warnings && (
        <Notice kind={warnings.length > 0 ? 'ask' : 'plain'}>
          <p>The limit stands.</p>
          {warnings.map((warning) => (
            <p key={warning}>{warning}</p>
          ))}
        </Notice>
      )}
    </FormSheet>
  );
}

/** What judges this type today, each with its source. */
function LimitsKept({ castingType }: { castingType: number }) {
  const { data, error } = useAppQuery('limits/list-catalogue', { castingType });
  if (error) return <ErrorNote error={error} />;
  if (!data) return null;
  if (data.length === 0) return <p>No limit of this type is known yet.</p>;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">What is measured</th>
          <th scope="col">Limit</th>
        </tr>
      </thead>
      <tbody>
        {data.map((one) => (
          <tr key={one.id}>
            <td>
              {one.words}, {one.stage === 'before' ? 'as found' : 'after'}
              <small>
                {FOR_WORDS[one.forWhat]}: {one.source}
                {one.notes.length > 0 && `. ${one.notes.join(', ')}`}
              </small>
            </td>
            <td>
              {one.text || one.targetText} {one.unit} {SIDE_WORDS[one.side]}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const FOR_WORDS = {
  casting_type: 'this type',
  engine_type: 'its engine',
  shop: 'every casting',
  customer_instruction: 'the customer',
  this_job: 'one job',
} as const;
const SIDE_WORDS = { any: '', I: 'intake', E: 'exhaust' } as const;
