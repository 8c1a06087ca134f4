/** Readings that do not simply pass, with what a lead decides about each, in words. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { newKey } from '../../../client/client.ts';
import { useClient } from '../../../client/use-app.ts';
import { Field } from '../../../kit/field.tsx';
import { type Mark, Verdict } from '../../../kit/mark.tsx';
import { NameAndPin } from '../../../kit/name-and-pin.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { SheetBody, SheetHead } from '../../../kit/sheet.tsx';
import { readingsAddress } from '../bench-addresses.ts';

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

type Group = Readonly<{ key: string; verdict: OpenReading['verdict']; words: string; places: string; count: number }>;

/** Nothing is to be decided about these one by one. */
const isGrouped = (one: OpenReading): boolean => one.verdict === 'not measured' || one.verdict === 'no limit known';

/** One line a quantity, with its places: `stem in guide: 1I1, 1I2`. The words of a place begin with its label. */
export function inGroups(readings: readonly OpenReading[]): Group[] {
  const groups = new Map<string, { verdict: OpenReading['verdict']; words: string; places: string[]; count: number }>();
  for (const one of readings.filter(isGrouped)) {
    const [label = '', ...rest] = one.spotId === null ? ['', one.words] : one.words.split(' ');
    const key = `${one.verdict}|${one.quantity}|${one.stage}|${one.point}`;
    const group = groups.get(key) ?? { verdict: one.verdict, words: rest.join(' '), places: [], count: 0 };
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
        {inGroups(sheet.readings).map((group) => (
          <Row
            key={group.key}
            href={readingsAddress(sheet.tag)}
            title={<b>{group.words}</b>}
            note={group.places}
            end={<Verdict mark={MARKS[group.verdict]} words={`${group.count} ${group.verdict}`} />}
          />
        ))}
        {sheet.readings
          .filter((one) => !isGrouped(one))
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
