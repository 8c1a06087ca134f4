/** Factors on prices by what a casting is: aluminium, twin cams, heavy diesel, close work. */
import { useState } from 'react';
import { formatFactor, readMoney } from '#core/kernel/format.ts';
import type { Factor } from '#core/kernel/units.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice, Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, SheetBody, SheetHead } from '../../../kit/sheet.tsx';
import type { Rates } from '../shop-shapes.ts';

/** What a factor may ask, with the answers it may want. */
const FACTS = {
  material: ['iron', 'aluminium', 'other'],
  cam_layout: ['none', 'side', 'ohv', 'sohc', 'dohc'],
  heavy_diesel: ['1'],
  close_tolerance: ['1'],
} as const;
type Fact = keyof typeof FACTS;
const FACT_WORDS: readonly Readonly<{ value: Fact; words: string }>[] = [
  { value: 'material', words: 'metal' },
  { value: 'cam_layout', words: 'cams' },
  { value: 'heavy_diesel', words: 'heavy diesel' },
  { value: 'close_tolerance', words: 'close work' },
];

export function FactorsPane({ rates, today }: { rates: Rates; today: string }) {
  const format = useFormat();
  const end = useAppCommand('rates/end-factor');
  return (
    <>
      {rates.factors.length === 0 && <Empty>No factor moves a price.</Empty>}
      <Rows label="Factors">
        {rates.factors.map((one) => (
          <Row
            key={one.id}
            title={
              <>
                <b>{one.code}</b> {formatFactor(one.factor as Factor, format.settings)} {one.whenWords}
              </>
            }
            note={`${one.touches.slice(0, 4).join(', ')}${one.touches.length > 4 ? ` and ${one.touches.length - 4} more` : ''}. Since ${format.day(one.from)}${one.until ? `, until ${format.day(one.until)}` : ''}`}
            end={
              one.until === null ? (
                <Button
                  working={end.pending}
                  label={`Ends today: ${one.code}`}
                  onPress={() => void end.send({ factor: one.id, seenVersion: one.version, until: today })}
                >
                  Ends today
                </Button>
              ) : (
                'ended'
              )
            }
          />
        ))}
      </Rows>
      <ErrorNote error={end.error} />
      <SheetHead title="Another factor" />
      <AddFactor today={today} />
    </>
  );
}

function AddFactor({ today }: { today: string }) {
  const format = useFormat();
  const kinds = useAppQuery('operations/list-kinds', {}).data?.kinds.filter((one) => !one.retired) ?? [];
  const add = useAppCommand('rates/add-factor');
  const [code, setCode] = useState('');
  const [text, setText] = useState('');
  const [fact, setFact] = useState<Fact>('material');
  const [value, setValue] = useState<string>('aluminium');
  const [from, setFrom] = useState(today);
  const [touches, setTouches] = useState<readonly number[]>([]);
  const factor = readMoney(text, format.settings);
  const fields = add.error?.reply.fields ?? {};
  const wrong = text.trim() !== '' && factor === null ? 'Write a factor, for example 1.15.' : undefined;
  const shut =
    code.trim() === ''
      ? 'Write a short name.'
      : (wrong ?? (factor === null ? 'Write the factor.' : touches.length === 0 ? 'Choose operations.' : undefined));
  const send = async () => {
    if (factor === null) return;
    const kept = await add.send({
      code,
      factor: factor * 100,
      whenFact: fact,
      whenValue: value,
      from,
      operations: [...touches],
    });
    if (!kept) return;
    setCode('');
    setText('');
    setTouches([]);
  };
  return (
    <SheetBody>
      <Field label="Short name" value={code} onChange={setCode} error={fields.code} />
      <Field label="Factor" inputMode="decimal" value={text} onChange={setText} error={wrong ?? fields.factor} />
      <Choice<Fact>
        label="When"
        options={FACT_WORDS}
        value={fact}
        onChange={(next) => {
          setFact(next);
          setValue(FACTS[next][0]);
        }}
      />
      {FACTS[fact].length > 1 && (
        <Choice
          label="is"
          options={FACTS[fact].map((one) => ({ value: one, words: one }))}
          value={value}
          onChange={setValue}
        />
      )}
      <Field label="From this day on" type="date" value={from} onChange={setFrom} error={fields.from} />
      <fieldset>
        <legend>Operations it touches</legend>
        {kinds.map((kind) => (
          <Tick
            key={kind.id}
            label={kind.shopWords}
            checked={touches.includes(kind.id)}
            onChange={(on) =>
              setTouches((before) => (on ? [...before, kind.id] : before.filter((one) => one !== kind.id)))
            }
          />
        ))}
      </fieldset>
      <ErrorNote error={add.error} fieldsShown={['code', 'factor', 'from']} />
      <Button working={add.pending} shut={shut} onPress={() => void send()}>
        Add the factor
      </Button>
    </SheetBody>
  );
}
