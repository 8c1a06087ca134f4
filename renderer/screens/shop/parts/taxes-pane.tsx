/** Taxes by class, each rate from a day on. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { formatPercent, readMoney } from '#core/kernel/format.ts';
import type { BasisPoints } from '#core/kernel/units.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, SheetBody, SheetHead } from '../../../kit/sheet.tsx';
import type { Rates } from '../shop-shapes.ts';

type TaxClass = InputOf<App['rates/set-tax-rate']>['classes'][number];

const CLASSES: readonly (readonly [TaxClass, string])[] = [
  ['labour_repair', 'labour: repair'],
  ['labour_fabrication', 'labour: making'],
  ['part', 'parts'],
  ['supplies', 'supplies'],
  ['fee', 'fees'],
  ['core', 'cores'],
  ['sublet', 'outside work'],
  ['freight', 'freight'],
  ['storage', 'storage'],
  ['combined', 'labour and part in one'],
];
const wordsOf = (one: string): string => CLASSES.find(([value]) => value === one)?.[1] ?? one;

export function TaxesPane({ rates, today }: { rates: Rates; today: string }) {
  const format = useFormat();
  const end = useAppCommand('rates/end-tax-rate');
  return (
    <>
      {rates.taxes.length === 0 && <Empty>No tax is set.</Empty>}
      <Rows label="Taxes">
        {rates.taxes.map((one) => (
          <Row
            key={one.id}
            title={
              <>
                <b>{one.words}</b>, {formatPercent(one.bp as BasisPoints, format.settings)}
              </>
            }
            note={`${one.code}: on ${one.classes.map(wordsOf).join(', ')}. Since ${format.day(one.from)}${one.until ? `, until ${format.day(one.until)}` : ''}`}
            end={
              one.until === null ? (
                <Button
                  working={end.pending}
                  label={`Ends today: ${one.words}`}
                  onPress={() => void end.send({ taxRate: one.id, seenVersion: one.version, until: today })}
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
      <SheetHead title="A tax, or a new rate of one" />
      <SetTax today={today} />
    </>
  );
}

function SetTax({ today }: { today: string }) {
  const format = useFormat();
  const command = useAppCommand('rates/set-tax-rate');
  const [code, setCode] = useState('');
  const [words, setWords] = useState('');
  const [text, setText] = useState('');
  const [from, setFrom] = useState(today);
  const [classes, setClasses] = useState<readonly TaxClass[]>([]);
  const bp = readMoney(text.replace('%', ''), format.settings);
  const fields = command.error?.reply.fields ?? {};
  const wrong = text.trim() !== '' && bp === null ? 'Write a percentage, for example 8.25.' : undefined;
  const shut =
    code.trim() === '' || words.trim() === ''
      ? 'Write both names.'
      : (wrong ?? (bp === null ? 'Write the rate.' : undefined));
  const send = async () => {
    if (bp === null) return;
    const kept = await command.send({ code, words, bp, from, classes: [...classes] });
    if (!kept) return;
    setCode('');
    setWords('');
    setText('');
    setClasses([]);
  };
  return (
    <SheetBody>
      <Field
        label="Short name; one that is there gets a new rate"
        value={code}
        onChange={setCode}
        error={fields.code}
      />
      <Field label="Name that prints" value={words} onChange={setWords} error={fields.words} />
      <Field label="Rate" end="%" inputMode="decimal" value={text} onChange={setText} error={wrong ?? fields.bp} />
      <Field label="From this day on" type="date" value={from} onChange={setFrom} error={fields.from} />
      <fieldset>
        <legend>It is charged on</legend>
        {CLASSES.map(([value, label]) => (
          <Tick
            key={value}
            label={label}
            checked={classes.includes(value)}
            onChange={(on) => setClasses((before) => (on ? [...before, value] : before.filter((one) => one !== value)))}
          />
        ))}
      </fieldset>
      <ErrorNote error={command.error} fieldsShown={['code', 'words', 'bp', 'from']} />
      <Button working={command.pending} shut={shut} onPress={() => void send()}>
        Set the tax
      </Button>
    </SheetBody>
  );
}
