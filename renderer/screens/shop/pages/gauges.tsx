/** Gauges: what each measures, its doubt, when it was last checked and when again. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery, useClient } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetFoot } from '../../../kit/sheet.tsx';
import { Late } from '../../../kit/state.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import css from './columns.module.css';

type Gauge = OutputOf<App['tools/list-tools']>[number];
type UnitName = InputOf<App['tools/add-tool']>['unit'];

export function GaugesPage() {
  const format = useFormat();
  const { data, error } = useAppQuery('tools/list-tools', {});
  const [at, setAt] = useState<number | 'new' | null>(null);
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  const chosen = data.find((one) => one.id === at);
  return (
    <div className={css.two}>
      <Sheet title="Gauges" end={`${data.filter((one) => one.overdue).length} to check`} scroll>
        {data.length === 0 && <Empty>Gauges stand here once they are added.</Empty>}
        <Rows label="Gauges">
          {data.map((one) => (
            <Row
              key={one.id}
              title={
                <>
                  <b>{one.name}</b>
                  {one.serial && `, ${one.serial}`}
                </>
              }
              note={[one.kind, one.range, one.uncertaintyText, one.workCentre].filter(Boolean).join(', ')}
              end={<Due gauge={one} />}
              endNote={one.lastCheck ? `checked ${format.day(one.lastCheck)}` : 'never checked here'}
              selected={one.id === at}
              onOpen={() => setAt(one.id)}
            />
          ))}
        </Rows>
        <SheetFoot>
          <Button onPress={() => setAt('new')}>Another gauge</Button>
        </SheetFoot>
      </Sheet>
      {at === 'new' && <AddGauge onDone={() => setAt(null)} />}
      {chosen && <CheckGauge key={`${chosen.id}-${chosen.version}`} gauge={chosen} onDone={() => setAt(null)} />}
      {at === null && (
        <Sheet title="A gauge">
          <Empty>Choose a gauge to write down its check, or add another one.</Empty>
        </Sheet>
      )}
    </div>
  );
}

function Due({ gauge }: { gauge: Gauge }) {
  const format = useFormat();
  if (gauge.retired) return 'out of use';
  if (gauge.nextDue === null) return 'no day set';
  const words = `due ${format.day(gauge.nextDue)}`;
  return gauge.overdue ? <Late>{words}</Late> : words;
}

function CheckGauge({ gauge, onDone }: { gauge: Gauge; onDone: () => void }) {
  const client = useClient();
  const format = useFormat();
  const check = useAppCommand('tools/record-check');
  const retire = useAppCommand('tools/retire-tool');
  const [on, setOn] = useState<string>(format.local(client.now()).day);
  const [result, setResult] = useState('');
  const [nextDue, setNextDue] = useState('');
  const fields = check.error?.reply.fields ?? {};
  return (
    <FormSheet
      title={gauge.name}
      note={gauge.kind}
      act="Keep the check"
      command={check}
      shut={
        result.trim() === '' ? 'Write the result.' : nextDue === '' ? 'Choose when it is checked again.' : undefined
      }
      fieldsShown={['on', 'result', 'nextDue']}
      onDone={onDone}
      onGo={() => void check.send({ tool: gauge.id, on, result, nextDue }).then((kept) => kept && onDone())}
    >
      <Field label="Checked on" type="date" value={on} onChange={setOn} error={fields.on} />
      <Field
        label="Result: standard used, what it read"
        value={result}
        onChange={setResult}
        error={fields.result}
        autoFocus
      />
      <Field label="Again on" type="date" value={nextDue} onChange={setNextDue} error={fields.nextDue} />
      <ErrorNote error={retire.error} />
      {!gauge.retired && (
        <Button
          kind="out"
          working={retire.pending}
          onPress={() =>
            void retire.send({ tool: gauge.id, seenVersion: gauge.version }).then((kept) => kept && onDone())
          }
        >
          {gauge.name} goes out of use; its readings stay
        </Button>
      )}
    </FormSheet>
  );
}

const GAUGE_UNITS: readonly Readonly<{ value: UnitName; words: string }>[] = [
  { value: 'in', words: 'in' },
  { value: 'mm', words: 'mm' },
  { value: 'lbf', words: 'lbf' },
  { value: 'N', words: 'N' },
];

function AddGauge({ onDone }: { onDone: () => void }) {
  const command = useAppCommand('tools/add-tool');
  const centres = useAppQuery('operations/list-work-centres', {}).data?.centres ?? [];
  const [typed, setTyped] = useState({
    name: '',
    kind: '',
    serial: '',
    centre: '',
    rangeLow: '',
    rangeHigh: '',
    resolution: '',
    uncertainty: '',
    setAgainst: '',
  });
  const [unit, setUnit] = useState<UnitName>('in');
  const fields = command.error?.reply.fields ?? {};
  const field = (key: keyof typeof typed, label: string) => (
    <Field
      label={label}
      value={typed[key]}
      onChange={(text) => setTyped((before) => ({ ...before, [key]: text }))}
      error={fields[key]}
    />
  );
  const { centre, ...rest } = typed;
  return (
    <FormSheet
      title="Another gauge"
      act={`Add ${typed.name.trim() || 'the gauge'}`}
      command={command}
      shut={typed.name.trim() === '' || typed.kind.trim() === '' ? 'Write its name and what it is.' : undefined}
      fieldsShown={Object.keys(rest)}
      onDone={onDone}
      onGo={() =>
        void command
          .send({
            ...rest,
            unit,
            workCentre: centres.find((one) => one.name === centre.trim())?.code ?? null,
          })
          .then((kept) => kept && onDone())
      }
    >
      {field('name', 'Name on it')}
      {field('kind', 'What it is: bore gauge, micrometer')}
      {field('serial', 'Serial number')}
      <Choice<UnitName> label="It reads" options={GAUGE_UNITS} value={unit} onChange={setUnit} error={fields.unit} />
      <div className={css.fields}>
        {field('rangeLow', 'From')}
        {field('rangeHigh', 'To')}
        {field('resolution', 'Smallest step')}
        {field('uncertainty', 'In doubt by, plus and minus')}
      </div>
      {field('setAgainst', 'Set against: ring, blocks, weights')}
      <Suggest
        label="Lives at"
        text={centre}
        onText={(text) => setTyped((before) => ({ ...before, centre: text }))}
        options={centres
          .filter((one) => one.name.toLowerCase().includes(centre.trim().toLowerCase()))
          .map((one) => ({ key: one.id, words: one.name, value: one }))}
        onPick={(one) => setTyped((before) => ({ ...before, centre: one.name }))}
        error={fields.workCentre}
      />
    </FormSheet>
  );
}
