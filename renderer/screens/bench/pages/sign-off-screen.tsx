/** Signing a casting off: what is not done, not measured, failed or too close, and who decides; then name and PIN. */

import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { newKey } from '../../../client/client.ts';
import { useAppQuery, useClient } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { NameAndPin } from '../../../kit/name-and-pin.tsx';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetHead } from '../../../kit/sheet.tsx';
import { BandAct, BandTitle } from '../../../kit/slots.tsx';
import { KeptHere } from '../parts/kept-here.tsx';
import { OpenReadings } from '../parts/open-readings.tsx';
import css from './sign-off-screen.module.css';

export type SignOff = OutputOf<App['castings/get-sign-off']>;

export function SignOffScreen({ tag }: { tag: number }) {
  const bench = useAppQuery('floor/get-bench', { tag });
  const casting = bench.data?.castingId;
  const sheet = useAppQuery(
    'castings/get-sign-off',
    { castingId: casting ?? 1 },
    { enabled: casting !== undefined, ticket: bench.data?.ticketId },
  );
  return (
    <>
      <BandTitle>Sign off {tag}</BandTitle>
      <BandAct>
        <Button href={benchAddress(tag)}>Back to casting</Button>
      </BandAct>
      <KeptHere />
      <ErrorNote error={bench.error ?? sheet.error} />
      {!sheet.data && !sheet.error && <Waiting />}
      {sheet.data && <Page sheet={sheet.data} />}
    </>
  );
}

function Page({ sheet }: { sheet: SignOff }) {
  return (
    <div className={css.page}>
      <Sheet title={`${sheet.tag} ${sheet.placeWords}`} note={sheet.word} scroll stop>
        <Stops sheet={sheet} />
        <OpenReadings sheet={sheet} />
        <Others sheet={sheet} />
      </Sheet>
      <Sheet title="Signature" note={sheet.needed > 1 ? 'two persons sign' : undefined} scroll>
        <SheetBody>
          <Signed sheet={sheet} />
          {sheet.nextPlace && <Sign sheet={sheet} />}
          {sheet.signatures.length > 0 && sheet.word !== 'released' && <Reopen sheet={sheet} />}
        </SheetBody>
      </Sheet>
    </div>
  );
}

/** Everything that stops the signature, one sentence each. */
function Stops({ sheet }: { sheet: SignOff }) {
  if (sheet.stops.length === 0) return <Empty>Nothing stops the signature.</Empty>;
  // Operations and readings are listed by themselves below.
  const listed = { reading: sheet.readings.length > 0, operation: sheet.notDone.length > 0 };
  const stops = sheet.stops.filter((one) => !(one.kind === 'reading' || one.kind === 'operation') || !listed[one.kind]);
  if (stops.length === 0) return null;
  return (
    <>
      <SheetHead title="Before it can be signed" />
      <Rows label="Before it can be signed">
        {stops.map((reason) => (
          <Row key={reason.words} title={reason.words} />
        ))}
      </Rows>
    </>
  );
}

function Others({ sheet }: { sheet: SignOff }) {
  const lines = [
    ...sheet.notDone.map((row) => ({ key: `o${row.operationId}`, title: row.words, end: row.state })),
    ...sheet.partsNotFitted.map((part) => ({ key: `p${part.id}`, title: part.words, end: part.state })),
    ...sheet.counts.map((words) => ({ key: words, title: words, end: '' })),
    ...sheet.photosWanted.map((words) => ({ key: words, title: words, end: 'photo wanted' })),
    ...sheet.waivers.map((waiver) => ({
      key: `w${waiver.no}-${waiver.by}`,
      title: waiver.words,
      end: `let pass by ${waiver.by}: ${waiver.reason}`,
    })),
  ];
  if (lines.length === 0) return null;
  return (
    <>
      <SheetHead title="Operations, parts, counts" />
      <Rows label="Operations, parts, counts">
        {lines.map((line) => (
          <Row key={line.key} title={line.title} end={line.end} />
        ))}
      </Rows>
    </>
  );
}

function Signed({ sheet }: { sheet: SignOff }) {
  const format = useFormat();
  return sheet.signatures.map((one) => (
    <p key={one.place}>
      <b>{one.by.name}</b> signed {one.place}, {format.at(one.at)}
      {one.samePersonOkBy && `, allowed by ${one.samePersonOkBy.name}`}
    </p>
  ));
}

function Sign({ sheet }: { sheet: SignOff }) {
  const client = useClient();
  const { nextPlace, stops } = sheet;
  if (!nextPlace) return null;
  return (
    <>
      {sheet.whyNot && <Notice>{sheet.whyNot}</Notice>}
      <NameAndPin
        act={`Sign ${sheet.tag}${sheet.needed > 1 ? `, ${nextPlace}` : ''}`}
        shut={stops.length > 0 ? `Open when nothing stops it: ${stops.length} to settle.` : undefined}
        onSend={async ({ person, pin }) => {
          const input = { castingId: sheet.castingId, seenVersion: sheet.version, place: nextPlace };
          await client.call('castings/sign-off-casting', input, { as: person, pin, key: newKey() });
        }}
      />
      <p>Signing locks the readings. A lead can reopen the casting with a reason.</p>
    </>
  );
}

/** A signature is taken back by a lead, with a reason that stays. */
function Reopen({ sheet }: { sheet: SignOff }) {
  const client = useClient();
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  if (!open) {
    return (
      <Button kind="out" onPress={() => setOpen(true)}>
        Reopen
      </Button>
    );
  }
  return (
    <NameAndPin
      act={`Reopen ${sheet.tag}`}
      kind="out"
      shut={reason.trim() === '' ? 'Write the reason.' : undefined}
      onClose={() => setOpen(false)}
      onSend={async ({ person, pin }) => {
        const input = { castingId: sheet.castingId, reason };
        await client.call('castings/reopen-casting', input, { as: person, pin, key: newKey() });
        setOpen(false);
      }}
    >
      <Field label="Reason" value={reason} onChange={setReason} maxLength={240} />
    </NameAndPin>
  );
}
