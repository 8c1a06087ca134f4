/** What usually comes with a casting of this type; check-in counts by it. */
import { useAppCommand } from '../../../client/use-app.ts';
import { keepTyped, useTyped } from '../../../client/use-draft.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice, Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import css from './arrival-form.module.css';
import {
  type ArrivalTyped,
  arrivalInput,
  type CastingType,
  emptyArrival,
  isArrivals,
  startArrival,
} from './arrival-typed.ts';

export function ArrivalForm({ type }: { type: CastingType }) {
  const command = useAppCommand('operations/set-arrival-template');
  const start = startArrival(type);
  const [lines, set] = useTyped<readonly ArrivalTyped[]>(`arrival-${type.id}`, start, isArrivals);
  const changed = JSON.stringify(arrivalInput(lines)) !== JSON.stringify(arrivalInput(start));
  const fields = command.error?.reply.fields ?? {};
  const change = (key: string, changes: Partial<ArrivalTyped>) =>
    set((before) => before.map((one) => (one.key === key ? { ...one, ...changes } : one)));
  return (
    <FormSheet
      title="What comes with it"
      note={type.code}
      act="Keep the list"
      command={command}
      shut={changed ? undefined : 'Nothing is changed.'}
      fieldsShown={lines.map((_, index) => `items.${index}.words`)}
      onDone={() => set(() => start)}
      onGo={() =>
        void command
          .send({ castingType: type.id, items: arrivalInput(lines) })
          .then((kept) => kept && keepTyped(`arrival-${type.id}`, null))
      }
    >
      <ul className={css.lines} aria-label="Arrival list">
        {lines.map((one, index) => (
          <ArrivalLine
            key={one.key}
            line={one}
            error={fields[`items.${index}.words`]}
            onChange={(changes) => change(one.key, changes)}
            onDrop={() => set((before) => before.filter((other) => other.key !== one.key))}
          />
        ))}
      </ul>
      <Button onPress={() => set((before) => [...before, emptyArrival(`new-${before.length}-${Date.now()}`)])}>
        Another line
      </Button>
    </FormSheet>
  );
}

function ArrivalLine({
  line,
  error,
  onChange,
  onDrop,
}: {
  line: ArrivalTyped;
  error: string | undefined;
  onChange: (changes: Partial<ArrivalTyped>) => void;
  onDrop: () => void;
}) {
  const name = line.words || 'the new line';
  return (
    <li>
      <Field
        quiet
        label={`What it is: ${name}`}
        placeholder="what it is"
        value={line.words}
        onChange={(words) => onChange({ words })}
        error={error}
      />
      <Field
        quiet
        label={`How many: ${name}`}
        placeholder="count"
        inputMode="numeric"
        value={line.expected}
        onChange={(expected) => onChange({ expected })}
      />
      <Button label={`Leave out ${name}`} onPress={onDrop}>
        Leave out
      </Button>
      <div className={css.more}>
        <Choice
          quiet
          label={`Order of ${name}`}
          options={[
            { value: 'none', words: 'any order' },
            { value: 'keep_order', words: 'keep order' },
            { value: 'own_place', words: 'own place' },
          ]}
          value={line.mixRule}
          onChange={(mixRule) => onChange({ mixRule })}
        />
        <Tick
          label="off before wash"
          checked={line.removeBeforeWash}
          onChange={(removeBeforeWash) => onChange({ removeBeforeWash })}
        />
        <Tick label="inside" checked={line.inside} onChange={(inside) => onChange({ inside })} />
      </div>
    </li>
  );
}
