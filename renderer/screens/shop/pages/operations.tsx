/** Operations: their words, where they are done, and which the shop no longer sells; and the work centres. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { formatSeconds } from '#core/kernel/format.ts';
import type { Seconds } from '#core/kernel/units.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { readCount } from '../../../kit/count.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet } from '../../../kit/sheet.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import css from './columns.module.css';

type Kind = OutputOf<App['operations/list-kinds']>['kinds'][number];
type Centre = OutputOf<App['operations/list-work-centres']>['centres'][number];

export function OperationsPage() {
  const { data, error } = useAppQuery('operations/list-kinds', {});
  const centres = useAppQuery('operations/list-work-centres', {}).data?.centres ?? [];
  const [text, setText] = useState('');
  const [at, setAt] = useState<number | null>(null);
  const [centre, setCentre] = useState<number | null>(null);
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  const looked = text.trim().toLowerCase();
  const rows = data.kinds.filter((one) =>
    `${one.shopWords} ${one.customerWords} ${one.code} ${one.workCentre ?? ''}`.toLowerCase().includes(looked),
  );
  const chosen = data.kinds.find((one) => one.id === at);
  const chosenCentre = centres.find((one) => one.id === centre);
  const nameOf = (code: string | null) => centres.find((one) => one.code === code)?.name ?? code ?? '';
  return (
    <div className={css.three}>
      <Sheet title="Operations" end={`${data.kinds.length}`} scroll>
        <div className={css.filter}>
          <Field label="Look for" value={text} onChange={setText} />
        </div>
        {rows.length === 0 && <Empty>Nothing is called that.</Empty>}
        <Rows label="Operations">
          {rows.map((one) => (
            <Row
              key={one.id}
              title={<b>{one.shopWords}</b>}
              note={`${one.customerWords}. ${nameOf(one.workCentre)}`}
              end={one.retired ? 'not sold' : one.section}
              selected={one.id === at}
              onOpen={() => setAt(one.id)}
            />
          ))}
        </Rows>
      </Sheet>
      {chosen ? (
        <KindForm key={`${chosen.id}-${chosen.version}`} kind={chosen} centres={centres} onDone={() => setAt(null)} />
      ) : (
        <Sheet title="An operation">
          <Empty>Choose an operation to change its words or where it is done.</Empty>
        </Sheet>
      )}
      {chosenCentre ? (
        <CentreForm
          key={`${chosenCentre.id}-${chosenCentre.version}`}
          centre={chosenCentre}
          onDone={() => setCentre(null)}
        />
      ) : (
        <Sheet title="Work centres" end={`${centres.length}`} scroll>
          <Rows label="Work centres">
            {centres.map((one) => (
              <Row
                key={one.id}
                title={<b>{one.name}</b>}
                note={one.outside ? 'outside the shop' : `${formatSeconds(one.effectiveSeconds as Seconds)} a day each`}
                end={one.unattended ? 'runs alone' : `${one.people} ${one.people === 1 ? 'person' : 'people'}`}
                onOpen={() => setCentre(one.id)}
              />
            ))}
          </Rows>
        </Sheet>
      )}
    </div>
  );
}

function KindForm({ kind, centres, onDone }: { kind: Kind; centres: readonly Centre[]; onDone: () => void }) {
  const change = useAppCommand('operations/change-kind');
  const retire = useAppCommand('operations/retire-kind');
  const [shop, setShop] = useState(kind.shopWords);
  const [customer, setCustomer] = useState(kind.customerWords);
  const [code, setCode] = useState(kind.workCentre);
  const [text, setText] = useState(centres.find((one) => one.code === kind.workCentre)?.name ?? kind.workCentre ?? '');
  const fields = change.error?.reply.fields ?? {};
  const changes = {
    ...(shop !== kind.shopWords && { shopWords: shop }),
    ...(customer !== kind.customerWords && { customerWords: customer }),
    ...(code !== kind.workCentre && code !== null && { workCentre: code }),
  };
  return (
    <FormSheet
      title={kind.shopWords}
      note={kind.retired ? 'not sold any more' : kind.section}
      act="Keep the changes"
      command={change}
      shut={Object.keys(changes).length === 0 ? 'Nothing is changed.' : undefined}
      fieldsShown={['shopWords', 'customerWords', 'workCentre']}
      onDone={onDone}
      onGo={() =>
        void change.send({ kind: kind.id, seenVersion: kind.version, ...changes }).then((kept) => kept && onDone())
      }
    >
      <Field label="Shop's words" value={shop} onChange={setShop} error={fields.shopWords} />
      <Field
        label="Customer's words, they print"
        value={customer}
        onChange={setCustomer}
        error={fields.customerWords}
      />
      <Suggest
        label="Done at"
        text={text}
        onText={setText}
        options={centres
          .filter((one) => one.name.toLowerCase().includes(text.trim().toLowerCase()))
          .map((one) => ({ key: one.id, words: one.name, value: one }))}
        onPick={(one) => {
          setCode(one.code);
          setText(one.name);
        }}
        error={fields.workCentre}
      />
      {kind.cautions && <p>{kind.cautions}</p>}
      <ErrorNote error={retire.error} />
      {!kind.retired && (
        <Button
          kind="out"
          working={retire.pending}
          onPress={() =>
            void retire.send({ kind: kind.id, seenVersion: kind.version }).then((kept) => kept && onDone())
          }
        >
          No longer sold; tickets that have it keep it
        </Button>
      )}
    </FormSheet>
  );
}

function CentreForm({ centre, onDone }: { centre: Centre; onDone: () => void }) {
  const command = useAppCommand('operations/set-work-centre');
  const [name, setName] = useState(centre.name);
  const [people, setPeople] = useState(String(centre.people));
  const [minutes, setMinutes] = useState(String(Math.floor(centre.effectiveSeconds / 60)));
  const fields = command.error?.reply.fields ?? {};
  const count = readCount(people, 99);
  const effective = readCount(minutes, 1440);
  return (
    <FormSheet
      title={centre.name}
      note="promises reckon with it"
      act="Keep the changes"
      command={command}
      shut={count === null || effective === null ? 'Write whole numbers.' : undefined}
      fieldsShown={['name', 'people', 'effectiveSeconds']}
      onDone={onDone}
      onGo={() =>
        count !== null &&
        effective !== null &&
        void command
          .send({
            centre: centre.id,
            seenVersion: centre.version,
            name,
            people: count,
            effectiveSeconds: effective * 60,
          })
          .then((kept) => kept && onDone())
      }
    >
      <Field label="Name" value={name} onChange={setName} error={fields.name} />
      <Field label="People" inputMode="numeric" value={people} onChange={setPeople} error={fields.people} />
      <Field
        label="Working minutes a day, each"
        inputMode="numeric"
        value={minutes}
        onChange={setMinutes}
        error={fields.effectiveSeconds}
      />
    </FormSheet>
  );
}
