/** Places where castings, bags and boxes stand. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { readCount } from '../../../kit/count.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet } from '../../../kit/sheet.tsx';
import css from './columns.module.css';

type Purpose = InputOf<App['racks/add-place']>['purpose'];

const PURPOSES: readonly Readonly<{ value: Purpose; words: string }>[] = [
  { value: 'arrival', words: 'arrival' },
  { value: 'waiting', words: 'waiting' },
  { value: 'parts', words: 'parts' },
  { value: 'bench', words: 'bench' },
  { value: 'ready', words: 'ready' },
  { value: 'quarantine', words: 'quarantine' },
  { value: 'floor', words: 'floor' },
  { value: 'outside', words: 'outside' },
];

export function PlacesPage() {
  const { data, error } = useAppQuery('racks/list-places', {});
  const retire = useAppCommand('racks/retire-place');
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  return (
    <div className={css.two}>
      <Sheet title="Places" end={`${data.places.length}`} scroll>
        {data.places.length === 0 && <Empty>Racks, shelves and floor places stand here once they are added.</Empty>}
        <ErrorNote error={retire.error} />
        <Rows label="Places">
          {data.places.map((one) => (
            <Row
              key={one.placeId}
              title={
                <>
                  <b>{one.code}</b> {one.words}
                </>
              }
              note={[one.purposeWords, one.limitWords].filter(Boolean).join(', ')}
              end={
                one.castings + one.containers > 0 ? (
                  `${one.castings + one.containers} pieces`
                ) : (
                  <Button
                    working={retire.pending}
                    label={`No longer used: ${one.code}`}
                    onPress={() => void retire.send({ placeId: one.placeId, seenVersion: one.version })}
                  >
                    No longer used
                  </Button>
                )
              }
            />
          ))}
        </Rows>
      </Sheet>
      <AddPlace />
    </div>
  );
}

function AddPlace() {
  const command = useAppCommand('racks/add-place');
  const [code, setCode] = useState('');
  const [words, setWords] = useState('');
  const [purpose, setPurpose] = useState<Purpose>('waiting');
  const [weight, setWeight] = useState('');
  const [metal, setMetal] = useState<'any' | 'iron' | 'aluminium'>('any');
  const fields = command.error?.reply.fields ?? {};
  const kilograms = readCount(weight, 9999);
  const clear = () => {
    setCode('');
    setWords('');
    setWeight('');
  };
  return (
    <FormSheet
      title="Another place"
      act={`Add ${code.trim() || 'the place'}`}
      command={command}
      shut={code.trim() === '' ? 'Write the code, for example C-4-2.' : undefined}
      fieldsShown={['code', 'words', 'maxWeight']}
      onDone={clear}
      onGo={() =>
        void command
          .send({
            code,
            words: words.trim() || null,
            purpose,
            maxWeight: kilograms === null ? null : kilograms * 1000,
            onlyMetal: metal === 'any' ? null : metal,
          })
          .then((kept) => kept && clear())
      }
    >
      <Field label="Code, as written on it" value={code} onChange={setCode} error={fields.code} />
      <Field label="Where it is" value={words} onChange={setWords} error={fields.words} />
      <Choice<Purpose> label="It is for" columns={4} options={PURPOSES} value={purpose} onChange={setPurpose} />
      <Field
        label="Carries, at most (empty: anything)"
        inputMode="numeric"
        end="kg"
        value={weight}
        onChange={setWeight}
        error={fields.maxWeight}
      />
      <Choice
        label="Metal"
        options={[
          { value: 'any', words: 'any' },
          { value: 'iron', words: 'iron only' },
          { value: 'aluminium', words: 'aluminium only' },
        ]}
        value={metal}
        onChange={setMetal}
      />
    </FormSheet>
  );
}
