/** The counter's first page: who to ring now, what hangs on the day, what to chase. Every row leads to where it is done. */
import { useLocation } from 'wouter';
import { useAppQuery } from '../../client/use-app.ts';
import { CHECK_IN, QUICK, QUOTE } from '../../kit/addresses.ts';
import { Button, GoButton } from '../../kit/button.tsx';
import { KeyHints } from '../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../kit/keyboard.ts';
import { PageRefused, Waiting } from '../../kit/pane.tsx';
import { RowGroup } from '../../kit/rows.tsx';
import { Empty, Sheet, SheetHead } from '../../kit/sheet.tsx';
import { SetAsideList } from './check-in/parts/set-aside-list.tsx';
import type { Home } from './counter-home.ts';
import css from './home-screen.module.css';
import { DayOfPromises } from './parts/day-of-promises.tsx';
import { HomeRows } from './parts/home-rows.tsx';

export function HomeScreen() {
  const { data: home, error, isPending, refetch } = useAppQuery('home/get-counter', {});
  const [, go] = useLocation();
  useAct('go', () => go(CHECK_IN.slice(1)));
  useAct('quote', () => go(QUOTE.slice(1)));
  if (isPending) return <Waiting />;
  if (error) return <PageRefused error={error} onAgain={() => void refetch()} />;
  return (
    <RowGroup>
      <div className={css.home}>
        <title>Counter - Benchtag</title>
        <div className={css.top}>
          <div>
            <h1>{home.dayWords}</h1>
            <p>{home.summary}</p>
          </div>
          <GoButton href={CHECK_IN} keys={keysOf('check-in')}>
            Check in castings
          </GoButton>
          <Button href={QUICK}>Quick ticket</Button>
          <Button href={QUOTE} keys={keysOf('quote')}>
            Quote on the phone
          </Button>
        </div>
        <DayOfPromises home={home} />
        <div className={css.three}>
          <RingColumn home={home} />
          <ChaseColumn home={home} />
          <DueColumn home={home} />
        </div>
      </div>
      <KeyHints
        hints={[
          { keys: ['Up', 'Down'], words: 'move' },
          { keys: ['Enter'], words: 'open' },
          { keys: [keysOf('find')], words: 'find' },
        ]}
      />
    </RowGroup>
  );
}

function RingColumn({ home }: { home: Home }) {
  return (
    <Sheet title="Missed, ring now" end={home.missed.count > 0 ? `${home.missed.count}` : undefined} scroll>
      {home.missed.count === 0 ? (
        <Empty>No promise was missed.</Empty>
      ) : (
        <HomeRows label="Missed, ring now" rows={home.missed.rows} end={(row) => row.leftWords} />
      )}
      <SheetHead title="Ring back" end="oldest first" />
      {home.ringBack.count === 0 ? (
        <Empty>Nobody is waiting for a call.</Empty>
      ) : (
        <HomeRows label="Ring back" rows={home.ringBack.rows} />
      )}
      <SheetHead title="Quotes with no answer" end={home.quotes.count > 0 ? `${home.quotes.count}` : undefined} />
      {home.quotes.count === 0 ? (
        <Empty>No quote waits for an answer.</Empty>
      ) : (
        <HomeRows label="Quotes with no answer" rows={home.quotes.rows} />
      )}
    </Sheet>
  );
}

function ChaseColumn({ home }: { home: Home }) {
  return (
    <Sheet title="Approvals to chase" end="work stands still" scroll>
      {home.approvals.count === 0 ? (
        <Empty>No approvals to chase.</Empty>
      ) : (
        <HomeRows label="Approvals to chase" rows={home.approvals.rows} />
      )}
      <SheetHead title="On hold, nobody chasing" end={home.holds.count > 0 ? `${home.holds.count}` : undefined} />
      {home.holds.count === 0 ? (
        <Empty>Every hold has somebody on it.</Empty>
      ) : (
        <HomeRows label="On hold, nobody chasing" rows={home.holds.rows} />
      )}
      {home.due.count > 0 && (
        <>
          <SheetHead title="Due today" end={`${home.due.count}`} />
          <HomeRows label="Due today" rows={home.due.rows} />
        </>
      )}
      <SetAsideList at={null} />
    </Sheet>
  );
}

function DueColumn({ home }: { home: Home }) {
  const rest = home.promisedToday.rows.filter((row) => !row.ownTime);
  return (
    <Sheet title="Ready for pick-up" end={home.ready.count > 0 ? `${home.ready.count}` : undefined} scroll>
      {home.ready.count === 0 ? (
        <Empty>Nothing stands ready.</Empty>
      ) : (
        <HomeRows label="Ready for pick-up" rows={home.ready.rows} />
      )}
      {rest.length > 0 && (
        <>
          <SheetHead title="Promised today" note="by the end of the day" end={`${rest.length}`} />
          <HomeRows label="Promised today" rows={rest} end={(row) => row.leftWords} />
        </>
      )}
      <SheetHead title="Tomorrow" note="promised, cannot be done yet" />
      {home.tomorrow.count === 0 ? (
        <Empty>Nothing promised for the next open day is in danger.</Empty>
      ) : (
        <HomeRows label="Tomorrow" rows={home.tomorrow.rows} />
      )}
    </Sheet>
  );
}
