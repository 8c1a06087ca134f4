/** Readings that do not simply pass, with what a lead decides about each, in words. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { newKey } from '../../../client/client.ts';
import { useClient } from '../../../client/use-app.ts';
import { Field } from '../../../kit/field.tsx';
import { type Mark, Verdict } from '../../../kit/mark.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { SheetBody, SheetHead } from '../../../kit/sheet.tsx';
import { readingsAddress } from '../bench-addresses.ts';
import { NameAndPin } from './name-and-pin.tsx';

type SignOff = OutputOf<App['castings/get-sign-off']>;
type OpenReading = SignOff['readings'][number];

const MARKS: Readonly<Record<OpenReading['verdict'], Mark>> = {
  'not measured': 'not-measured',
  'no limit known': 'no-limit',
  fail: 'over',
  'too close to call': 'close',
};

const keyOf = (one: OpenReading): string => `${one.quantity}|${one.spotId}|${one.point}|${one.stage}`;
const mayDecide = (one: OpenReading): boolean => one.verdict === 'fail' || one.verdict === 'too close to call';

type NotMeasured = Readonly<{ key: string; words: string; places: string; count: number }>;

/** One line a quantity, with its places: `stem in guide: 1I1, 1I2`. The words of a place begin with its label. */
export function notMeasured(readings: readonly OpenReading[]): NotMeasured[] {
  const groups = new Map<string, { words: string; places: string[]; count: number }>();
  for (const one of readings.filter((reading) => reading.verdict === 'not measured')) {
    const [label = '', ...rest] = one.spotId === null ? ['', one.words] : one.words.split(' ');
    const words = rest.join(' ');
    const key = `${one.quantity}|${one.stage}|${one.point}`;
    const group = groups.get(key) ?? { words, places: [], count: 0 };
    if (label !== '') group.places.push(label);
    groups.set(key, { ...group, count: group.count + 1 });
  }
  return [...groups].map(([key, group]) => ({ ...group, key, places: group.places.join(', ') }));
}

export function OpenReadings({ sheet }: { sheet: SignOff }) {
  const client = useClient();
  const [words, setWords] = useState<Readonly<Record<string, string>>>({});
  if (sheet.readings.length === 0) return null;
  const open = sheet.readings.filter((one) => mayDecide(one) && one.stops);
  const decided = open.filter((one) => (words[keyOf(one)] ?? '').trim() !== '');
  return (
    <>
      <SheetHead title="Readings" note="not measured, failed, too close, no limit known" />
      <Rows label="Readings to look at">
        {notMeasured(sheet.readings).map((group) => (
          <Row
            key={group.key}
            href={readingsAddress(sheet.tag)}
            title={<b>{group.words}</b>}
            note={group.places}
            end={<Verdict mark="not-measured" words={`${group.count} not measured`} />}
          />
        ))}
        {sheet.readings
          .filter((one) => one.verdict !== 'not measured')
          .map((one) => (
            <Row
              key={keyOf(one)}
              title={
                <>
                  <b>{one.words}</b> {one.value}
                </>
              }
              note={`${one.limit}${one.decision ? `. ${one.decision.by}: ${one.decision.words}` : ''}`}
              end={<Verdict mark={MARKS[one.verdict]} words={one.verdict} />}
              endNote={one.decision ? (one.decision.accepted ? 'accepted' : 'refused') : undefined}
            />
          ))}
      </Rows>
      {open.length > 0 && (
        <SheetBody>
          {open.map((one) => (
            <Field
              key={keyOf(one)}
              label={`Why ${one.words} ${one.value} may stay`}
              value={words[keyOf(one)] ?? ''}
              onChange={(text) => setWords((before) => ({ ...before, [keyOf(one)]: text }))}
              maxLength={240}
            />
          ))}
          <NameAndPin
            act={`Lead accepts ${decided.length} of ${open.length}`}
            kind="out"
            shut={decided.length === 0 ? 'Write why it may stay.' : undefined}
            onSend={async ({ person, pin }) => {
              for (const one of decided) {
                await client.call('readings/decide-reading', decisionOf(sheet, one, words[keyOf(one)] ?? ''), {
                  as: person,
                  pin,
                  key: newKey(),
                });
              }
              setWords({});
            }}
          />
        </SheetBody>
      )}
    </>
  );
}

const decisionOf = (sheet: SignOff, one: OpenReading, words: string): InputOf<App['readings/decide-reading']> => ({
  casting: sheet.castingId,
  quantity: one.quantity,
  spot: one.spotId,
  point: one.point,
  stage: one.stage,
  accept: true,
  words,
});
