/** Screens that may be used: names, where they stand, and shutting one out. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { FormSheet } from '../../../kit/form-sheet.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { PinStrip } from '../../../kit/pin-strip.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody } from '../../../kit/sheet.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import css from './columns.module.css';

type Device = OutputOf<App['devices/list-devices']>['devices'][number];

export function ScreensPage() {
  const format = useFormat();
  const { data, error } = useAppQuery('devices/list-devices', {});
  const [at, setAt] = useState<number | null>(null);
  if (error) return <ErrorNote error={error} />;
  if (!data) return <Waiting />;
  const chosen = data.devices.find((one) => one.id === at);
  return (
    <div className={css.two}>
      <Sheet title="Screens" end={`${data.devices.filter((one) => !one.revoked).length} may be used`} scroll>
        {data.devices.length === 0 && <Empty>Screens stand here once they have shown the pairing code.</Empty>}
        <Rows label="Screens">
          {data.devices.map((one) => (
            <Row
              key={one.id}
              title={
                <>
                  <b>{one.name}</b>
                  {one.thisOne && ', this one'}
                </>
              }
              note={`${one.kind}${one.workCentre ? `, ${one.workCentre}` : ''}, paired ${format.at(one.pairedAt)}`}
              end={one.revoked ? 'shut out' : one.lastSignIn ? `signed in ${format.at(one.lastSignIn)}` : 'never used'}
              selected={one.id === at}
              onOpen={() => setAt(one.id)}
            />
          ))}
        </Rows>
        <SheetBody>
          <p>Another screen is paired at the computer that keeps the workspace: it shows the address to open.</p>
        </SheetBody>
      </Sheet>
      {chosen ? (
        <DeviceForm key={`${chosen.id}-${chosen.version}`} device={chosen} onDone={() => setAt(null)} />
      ) : (
        <Sheet title="A screen">
          <Empty>Choose a screen to name it or to shut it out.</Empty>
        </Sheet>
      )}
    </div>
  );
}

function DeviceForm({ device, onDone }: { device: Device; onDone: () => void }) {
  const set = useAppCommand('devices/set-device');
  const revoke = useAppCommand('devices/revoke-device');
  const centres = useAppQuery('operations/list-work-centres', {}).data?.centres ?? [];
  const [name, setName] = useState(device.name);
  const [centre, setCentre] = useState(device.workCentre ?? '');
  const fields = set.error?.reply.fields ?? {};
  const found = centres.find((one) => one.name === centre.trim() || one.code === centre.trim());
  const unknown = centre.trim() !== '' && !found ? 'Choose one of the work centres, or leave it empty.' : undefined;
  return (
    <FormSheet
      title={device.name}
      note={device.thisOne ? 'this screen' : device.kind}
      act="Keep the changes"
      command={set}
      shut={unknown ?? (device.revoked ? 'It is shut out.' : undefined)}
      fieldsShown={['name', 'workCentre']}
      onDone={onDone}
      onGo={() =>
        void set
          .send({ device: device.id, seenVersion: device.version, name, workCentre: found?.id ?? null })
          .then((kept) => kept && onDone())
      }
    >
      <Field label="Name" value={name} onChange={setName} error={fields.name} />
      <Suggest
        label="Stands at (empty: nowhere in particular)"
        text={centre}
        onText={setCentre}
        options={centres
          .filter((one) => one.name.toLowerCase().includes(centre.trim().toLowerCase()))
          .map((one) => ({ key: one.id, words: one.name, value: one }))}
        onPick={(one) => setCentre(one.name)}
        error={unknown ?? fields.workCentre}
      />
      {!device.revoked && (
        <>
          <p>A screen that is shut out shows nothing any more until it is paired again.</p>
          <PinStrip ask={revoke} act={`Shut out ${device.name}`} />
          {!revoke.wantsPin && <ErrorNote error={revoke.error} />}
          <Button
            kind="out"
            working={revoke.pending}
            onPress={() =>
              void revoke.send({ device: device.id, seenVersion: device.version }).then((kept) => kept && onDone())
            }
          >
            Shut out {device.name}
          </Button>
        </>
      )}
    </FormSheet>
  );
}
