/** The queue of one bench: what is on the machine, what comes next, what waits and for what. */
import { useEffect, useRef } from 'react';
import { useAppQuery } from '../../client/use-app.ts';
import { benchAddress } from '../../kit/addresses.ts';
import { Button } from '../../kit/button.tsx';
import { ErrorNote } from '../../kit/notice.tsx';
import { Waiting } from '../../kit/pane.tsx';
import { moveInRows } from '../../kit/rows.tsx';
import { BandAct, BandTitle } from '../../kit/slots.tsx';
import { Hold, Late, Rush } from '../../kit/state.tsx';
import { MetalMark, Tag } from '../../kit/tag.tsx';
import { BENCHES } from './bench-addresses.ts';
import type { QueueAnswer, QueueLine } from './bench-casting.ts';
import { rememberCentre } from './hooks/centre-memory.ts';
import { useBelow } from './hooks/use-below.ts';
import { KeptHere } from './parts/kept-here.tsx';
import { OnMachine } from './parts/on-machine.tsx';
import css from './queue-screen.module.css';

export function QueueScreen({ centre }: { centre: number }) {
  const { data, error, refetch } = useAppQuery('floor/list-queue', { centreId: centre }, { keep: true });
  useEffect(() => {
    if (data) rememberCentre(centre);
  }, [data, centre]);
  return (
    <>
      <BandTitle>{data?.centre.name ?? 'Bench'}</BandTitle>
      <BandAct>
        <Button href={BENCHES}>Other benches</Button>
      </BandAct>
      {error && <ErrorNote error={error} acts={<Button onPress={() => void refetch()}>Try again</Button>} />}
      {!data && !error && <Waiting />}
      {data && <Queue queue={data} />}
    </>
  );
}

function Queue({ queue }: { queue: QueueAnswer }) {
  const list = useRef<HTMLDivElement>(null);
  const below = useBelow(list, queue);
  const clear = queue.next.length + queue.waiting.length + queue.held.length === 0;
  return (
    <div className={css.queue}>
      <KeptHere>
        <span>{below > 0 ? <b>{below} more below</b> : queue.centre.words}</span>
      </KeptHere>
      {queue.running.map((line) => (
        <OnMachine key={line.operationId} line={line} />
      ))}
      <section className={css.sheet} aria-label="Next">
        <div className={css.head}>
          <h2>Next</h2>
          <small>{queue.orderWords}</small>
          {queue.notApproved > 0 && <small className={css.end}>{queue.notApproved} not approved yet</small>}
        </div>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys move among the rows inside. */}
        <div ref={list} className={css.list} onKeyDown={moveInRows}>
          {clear && (
            <p className={css.empty}>This bench is clear. Next work comes from check-in and from other benches.</p>
          )}
          <Lines label="Next" lines={queue.next} />
          {queue.waiting.length > 0 && <h3 className={css.part}>Waits</h3>}
          <Lines label="Waits" lines={queue.waiting} />
          {queue.held.length > 0 && <h3 className={css.part}>On hold</h3>}
          <Lines label="On hold" lines={queue.held} />
        </div>
      </section>
    </div>
  );
}

function Lines({ label, lines }: { label: string; lines: readonly QueueLine[] }) {
  if (lines.length === 0) return null;
  return (
    <ul aria-label={label}>
      {lines.map((line) => (
        <li key={line.operationId} data-line="">
          <a className={css.line} data-row="" href={benchAddress(line.tag)}>
            <span className={css.tag}>
              <Tag number={line.tag} metal={line.metal.class} size="l" />
              <MetalMark metal={line.metal.class} />
            </span>
            <span className={css.words}>
              <b>{line.words}</b>
              <span>{line.customer}</span>
            </span>
            <span className={css.units}>{line.units}</span>
            <span className={css.setUp}>{line.setUp || line.unitWords}</span>
            <LineEnd line={line} />
          </a>
        </li>
      ))}
    </ul>
  );
}

/** Promise, rush, and what it waits for. */
function LineEnd({ line }: { line: QueueLine }) {
  const { promise, hold } = line;
  return (
    <span className={css.lineEnd}>
      {promise && <b>{promise.late ? <Late>{promise.words}, late</Late> : promise.words}</b>}
      {promise?.rush && <Rush />}
      {hold ? <Hold>{hold.words}</Hold> : line.right !== '' && <span>{line.right}</span>}
    </span>
  );
}
