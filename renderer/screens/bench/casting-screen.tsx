/** One casting at the bench: what it is, what it must not meet, what is wanted in order, and what is next. */
import { useAppQuery } from '../../client/use-app.ts';
import { Button } from '../../kit/button.tsx';
import { ErrorNote, Notice } from '../../kit/notice.tsx';
import { Waiting } from '../../kit/pane.tsx';
import { BandAct, BandTitle } from '../../kit/slots.tsx';
import { Hold } from '../../kit/state.tsx';
import {
  BENCHES,
  foundAddress,
  photosAddress,
  queueAddress,
  readingsAddress,
  signOffAddress,
} from './bench-addresses.ts';
import type { BenchCasting } from './bench-casting.ts';
import css from './casting-screen.module.css';
import { rememberedCentre } from './hooks/centre-memory.ts';
import { CastingSide } from './parts/casting-side.tsx';
import { KeptHere } from './parts/kept-here.tsx';
import { OperationList } from './parts/operation-list.tsx';
import { WayOn } from './parts/way-on.tsx';

export function CastingScreen({ tag }: { tag: number }) {
  const { data, error, refetch } = useAppQuery('floor/get-bench', { tag });
  const centre = rememberedCentre();
  return (
    <>
      <BandTitle>Casting</BandTitle>
      <BandAct>
        <Button href={centre === null ? BENCHES : queueAddress(centre)}>Queue</Button>
      </BandAct>
      {error && <ErrorNote error={error} acts={<Button onPress={() => void refetch()}>Try again</Button>} />}
      {!data && !error && <Waiting />}
      {data && <Casting bench={data} />}
    </>
  );
}

function Casting({ bench }: { bench: BenchCasting }) {
  const left = bench.operations.filter(
    (row) => row.mark === 'open' || row.mark === 'uncovered' || row.mark === 'running',
  );
  return (
    <div className={css.page}>
      <KeptHere>
        <span>{bench.signOffWords ?? `${bench.word}${bench.place ? `, stands at ${bench.place}` : ''}`}</span>
      </KeptHere>
      <CastingSide bench={bench} />
      <div className={css.right}>
        <Stops bench={bench} />
        <OperationList bench={bench} />
        <div className={css.bottom}>
          <Button href={readingsAddress(bench.tag)}>Readings</Button>
          <Button href={photosAddress(bench.tag)}>Arrival photos, {bench.photos.length}</Button>
          {left.length === 0 && (
            <Button kind={SIGNED.includes(bench.word) ? 'plain' : 'go'} href={signOffAddress(bench.tag)}>
              {SIGNED.includes(bench.word) ? 'Signatures' : 'Sign off'}
            </Button>
          )}
          <Button kind="found" href={foundAddress(bench.tag)}>
            Found something
          </Button>
        </div>
      </div>
    </div>
  );
}

/** Words of a casting whose signature stands, or will never be. */
const SIGNED: readonly string[] = ['signed off', 'staged', 'released', 'scrap'];

/** What stops the whole casting, and paper that is out of date. */
function Stops({ bench }: { bench: BenchCasting }) {
  const { firstStop } = bench;
  return (
    <div className={css.stops}>
      {bench.identityInDoubt && (
        <Notice kind="wrong">
          <b>Identity in doubt.</b> Everything near this casting stands still until it is cleared.
        </Notice>
      )}
      {bench.holds.map((hold) => (
        <Notice
          key={hold.id}
          kind="ask"
          acts={
            <WayOn
              bench={bench}
              wayOn={{ words: 'Close the hold', request: 'floor/close-hold', input: { holdId: hold.id } }}
            />
          }
        >
          <Hold frame={hold.identity}>
            {hold.reasonWords}, {hold.days === 0 ? 'today' : hold.days === 1 ? '1 day' : `${hold.days} days`}
          </Hold>{' '}
          {hold.onWhat}
          {hold.words && `: ${hold.words}`}
        </Notice>
      ))}
      {firstStop && bench.holds.length === 0 && !bench.operations.some((row) => row.next) && (
        <Notice kind="ask">{firstStop.words}</Notice>
      )}
      {bench.paperWords && <Notice>{bench.paperWords} Do not work from the old sheet: this page is right.</Notice>}
    </div>
  );
}
