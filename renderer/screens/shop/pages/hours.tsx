/** When counter and benches are open, and the days the shop is closed. Promises go by them. */
import { useState } from 'react';
import { useAppCommand, useAppQuery, useClient } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import css from './columns.module.css';
import hoursCss from './hours.module.css';
import {
  type HoursTyped,
  hoursInput,
  hoursKey,
  hoursText,
  type OpenHours,
  PARTS,
  readSpans,
  WEEKDAYS,
} from './hours-typed.ts';

export function HoursPage() {
  const { data, error } = useAppQuery('shop/get-settings', {});
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  return (
    <div className={css.two}>
      <Week key={JSON.stringify(data.openHours)} kept={data.openHours} />
      <ClosedDays holidays={data.holidays} />
    </div>
  );
}

const isHours = (value: unknown): value is HoursTyped => typeof value === 'object' && value !== null;

function Week({ kept }: { kept: OpenHours }) {
  const command = useAppCommand('promises/set-open-hours');
  const seen = hoursText(kept);
  const [typed, set] = useTyped<HoursTyped>('open-hours', {}, isHours);
  const all = { ...seen, ...typed };
  const read = hoursInput(all);
  const changed = Object.keys(seen).some((key) => all[key] !== seen[key]);
  const shut = 'wrong' in read ? 'A line cannot be read.' : changed ? undefined : 'Nothing is changed.';
  return (
    <FormSheet
      title="Opening hours"
      note="7:30 - 12:00, 13:00 - 17:00; empty is closed"
      act="Keep the hours"
      command={command}
      shut={shut}
      onDone={() => set(() => ({}))}
      onGo={() => 'hours' in read && void command.send({ hours: read.hours }).then((done) => done && set(() => ({})))}
    >
      <div className={hoursCss.week}>
        <span />
        <b>Counter</b>
        <b>Benches</b>
        {WEEKDAYS.map((name, index) => (
          <Day key={name} name={name} weekday={index + 1} all={all} set={set} />
        ))}
      </div>
    </FormSheet>
  );
}

function Day({
  name,
  weekday,
  all,
  set,
}: {
  name: string;
  weekday: number;
  all: HoursTyped;
  set: (change: (before: HoursTyped) => HoursTyped) => void;
}) {
  return (
    <>
      <span>{name}</span>
      {PARTS.map((part) => {
        const key = hoursKey(part, weekday);
        const text = all[key] ?? '';
        return (
          <Field
            key={part}
            quiet
            label={`${name}, ${part}`}
            placeholder="closed"
            value={text}
            onChange={(value) => set((before) => ({ ...before, [key]: value }))}
            error={readSpans(text) === null ? 'Write 7:30 - 17:00.' : undefined}
          />
        );
      })}
    </>
  );
}

type Holidays = readonly Readonly<{ id: number; day: string; words: string }>[];

function ClosedDays({ holidays }: { holidays: Holidays }) {
  const format = useFormat();
  const client = useClient();
  const add = useAppCommand('promises/add-holiday');
  const end = useAppCommand('promises/end-holiday');
  const [day, setDay] = useState('');
  const [words, setWords] = useState('');
  const today = format.local(client.now()).day;
  const fields = add.error?.reply.fields ?? {};
  return (
    <Sheet title="Closed days" note="no promise falls on them" scroll>
      {holidays.length === 0 && <Empty>Days the shop is closed stand here.</Empty>}
      <Rows label="Closed days">
        {holidays.map((one) => (
          <Row
            key={one.id}
            title={<b>{one.words}</b>}
            note={`${format.day(one.day)} ${one.day.slice(0, 4)}`}
            end={
              one.day >= today && (
                <Button
                  working={end.pending}
                  label={`Open after all: ${one.words}`}
                  onPress={() => void end.send({ holiday: one.id })}
                >
                  Open after all
                </Button>
              )
            }
          />
        ))}
      </Rows>
      <SheetBody>
        <Field label="Day" type="date" value={day} onChange={setDay} error={fields.day} />
        <Field label="Why it is closed" value={words} onChange={setWords} error={fields.words} />
        <ErrorNote error={add.error ?? end.error} fieldsShown={['day', 'words']} />
      </SheetBody>
      <SheetFoot>
        <Button
          working={add.pending}
          shut={day === '' || words.trim() === '' ? 'Choose the day and write why.' : undefined}
          onPress={() =>
            void add.send({ day, words }).then((kept) => {
              if (!kept) return;
              setDay('');
              setWords('');
            })
          }
        >
          Close on this day
        </Button>
      </SheetFoot>
    </Sheet>
  );
}
