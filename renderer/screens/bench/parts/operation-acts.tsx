/** What may be done to the operation under the hand: start, stop, done; or what is missing and the way on. */
import { Fragment, useState } from 'react';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { deckAddress, tableAddress } from '../bench-addresses.ts';
import type { BenchCasting, BenchOperation, Reason } from '../bench-casting.ts';
import { faceOfTable } from '../deck-faces.ts';
import { LeadStarts } from './lead-starts.tsx';
import css from './operation-acts.module.css';
import { OperationMore } from './operation-more.tsx';
import { ResultKeys } from './result-keys.tsx';
import { WayOn } from './way-on.tsx';

type Acts = Readonly<{
  bench: BenchCasting;
  row: BenchOperation;
  /** Sentences to show once: soft rules and warnings. */
  onSaid: (sentences: readonly string[]) => void;
  onDone: () => void;
}>;

export function OperationActs({ bench, row, onSaid, onDone }: Acts) {
  const [both, setBoth] = useState(false);
  const start = useAppCommand('floor/start-operation');
  const stop = useAppCommand('floor/stop-operation');
  const finish = useAppCommand('floor/finish-operation');
  const downTo = useAppCommand('floor/finish-down-to');
  const mate = both ? row.both : null;
  const operations = [
    { operationId: row.id, seenVersion: row.version },
    ...(mate ? [{ operationId: mate.operationId, seenVersion: mate.version }] : []),
  ];
  const error = start.error ?? stop.error ?? finish.error ?? downTo.error;

  async function act(command: typeof start | typeof stop | typeof finish, done: boolean) {
    for (const one of [start, stop, finish, downTo]) one.reset();
    const answer = await command.send({ operations });
    if (!answer) return;
    onSaid([...answer.soft.map((one) => one.words), ...answer.warnings]);
    if (done) onDone();
  }
  async function closeDownTo() {
    const answer = await downTo.send({ operationId: row.id, seenVersion: row.version, both });
    if (!answer) return;
    onSaid([...answer.soft.map((one) => one.words), ...answer.warnings]);
    onDone();
  }

  return (
    <div className={css.acts}>
      {row.cautions && <p className={css.caution}>{row.cautions}</p>}
      {row.stops.filter(isSaidHere).map((reason) => (
        <div key={reason.words} className={css.stop}>
          <p>{reason.words}</p>
          <span className={css.ways}>
            {reason.wayOn && <WayOn bench={bench} wayOn={reason.wayOn} table={row.before.table} />}
            {reason.rule?.waiver === 'reason' && <LeadStarts row={row} reason={reason} />}
          </span>
        </div>
      ))}
      {(row.mayFinish || row.mark === 'done') && <ResultKeys bench={bench} row={row} />}
      <div className={css.buttons}>
        <OperationMore row={row} />
        <Tables bench={bench} row={row} />
        {row.both && row.mark !== 'done' && (
          <Button pressed={both} onPress={() => setBoth(!both)}>
            Both, {row.both.tag} too
          </Button>
        )}
        {row.downTo.length > 1 && (
          <Button working={downTo.pending} onPress={() => void closeDownTo()}>
            Done down to here, {row.downTo.length}
          </Button>
        )}
        {row.mayStop && (
          <Button working={stop.pending} onPress={() => void act(stop, false)}>
            Stop
          </Button>
        )}
        {row.mayFinish && !row.mayStop && (
          <Button working={finish.pending} onPress={() => void act(finish, true)}>
            Done
          </Button>
        )}
        {row.mayStart && !row.mayStop && (
          <GoButton working={start.pending} onPress={() => void act(start, false)}>
            Start
          </GoButton>
        )}
        {row.mayFinish && row.mayStop && (
          <GoButton working={finish.pending} onPress={() => void act(finish, true)}>
            Done
          </GoButton>
        )}
      </div>
      <ErrorNote error={error} />
    </div>
  );
}

/** Holds stand at the top of the page with the way to close them. */
const isSaidHere = (reason: Reason): boolean => reason.kind !== 'hold' && reason.kind !== 'identity';

/** Where an operation wants flatness, the survey of the face. */
function Survey({ bench, table }: { bench: BenchCasting; table: string }) {
  const face = faceOfTable(bench.kind, table);
  return face === null ? null : <Button href={deckAddress(bench.tag, face)}>Flatness</Button>;
}

/** The readings this operation needs, a touch away. */
function Tables({ bench, row }: { bench: BenchCasting; row: BenchOperation }) {
  const before = row.before.of > 0 ? row.before.table : null;
  const tables = new Set([before, row.after.table].filter((table) => table !== null));
  return [...tables].map((table) => (
    <Fragment key={table}>
      <Survey bench={bench} table={table} />
      <Button href={tableAddress(bench.tag, table)}>
        {bench.tables.find((one) => one.code === table)?.words ?? 'Readings'}
      </Button>
    </Fragment>
  ));
}
