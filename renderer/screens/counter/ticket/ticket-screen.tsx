/** One ticket: the agreement, castings and operations at once, holds, money, promise, calls and what was done. */
import { useState } from 'react';
import { useLocation } from 'wouter';
import { useAppQuery } from '../../../client/use-app.ts';
import { useMay } from '../../../client/use-me.ts';
import { papersAddress } from '../../../kit/addresses.ts';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { Notice } from '../../../kit/notice.tsx';
import { PageRefused, Waiting } from '../../../kit/pane.tsx';
import { StageRule } from '../../../kit/rules.tsx';
import { PageName, Sheet } from '../../../kit/sheet.tsx';
import { Asked, Rush } from '../../../kit/state.tsx';
import { type PanelName, panelOf } from './panel-names.ts';
import { ActivityPane } from './parts/activity-pane.tsx';
import { CastingsPane } from './parts/castings-pane.tsx';
import { HoldsPane } from './parts/holds-pane.tsx';
import { LinesPane } from './parts/lines-pane.tsx';
import { MoneyPane } from './parts/money-pane.tsx';
import { Panel } from './parts/panel.tsx';
import { PromisePane } from './parts/promise-pane.tsx';
import { TicketHead } from './parts/ticket-head.tsx';
import css from './ticket-screen.module.css';
import type { Ticket } from './ticket-shapes.ts';

export function TicketScreen({
  number,
  panel: first = null,
}: {
  number: number /** What is open at the right at first. */;
  panel?: PanelName | null;
}) {
  const { data: ticket, error, isPending, refetch } = useAppQuery('tickets/get-ticket', { number });
  if (isPending) return <Waiting />;
  if (error) return <PageRefused error={error} onAgain={() => void refetch()} />;
  return <TicketPageOf key={ticket.ticketId} ticket={ticket} first={first} />;
}

function TicketPageOf({ ticket, first }: { ticket: Ticket; first: PanelName | null }) {
  const may = useMay();
  const [panel, setPanel] = useState<PanelName | null>(first);
  const [at, setAt] = useState<number | null>(null);
  const [showing, setShowing] = useState<'work' | 'lines'>('work');
  const chosen =
    ticket.castings.find((one) => one.castingId === at) ??
    ticket.castings.find((one) => one.held) ??
    ticket.castings[0];
  const close = () => setPanel(null);
  const [, go] = useLocation();
  useAct('print', () => go(papersAddress(ticket.number).slice(1)));
  useAct('go', panel === null && may.has('tickets:edit') ? () => setPanel(panelOf(ticket)) : undefined);
  useAct('leave', panel !== null ? close : undefined);
  return (
    <div className={css.page}>
      <PageName>{`Ticket ${ticket.number}`}</PageName>
      <TicketHead ticket={ticket} onPanel={setPanel} />
      <div className={css.columns}>
        <div className={css.left}>
          {ticket.holds.some((hold) => hold.identity) && (
            <Notice kind="ask">
              <b>Which casting is this?</b> Its identity is in doubt: everything on this ticket stands until it is
              cleared.
            </Notice>
          )}
          <Sheet title="Agreement" note="moved by the counter" end={<Chips ticket={ticket} />}>
            <StageRule
              stages={ticket.agreement.map((stage) => stage.word)}
              at={ticket.agreement.find((stage) => stage.here)?.word ?? ''}
            />
          </Sheet>
          {showing === 'work' ? (
            <CastingsPane
              ticket={ticket}
              chosen={chosen}
              onChoose={setAt}
              onLines={() => setShowing('lines')}
              onPanel={setPanel}
            />
          ) : (
            <LinesPane ticket={ticket} onWork={() => setShowing('work')} />
          )}
        </div>
        <div className={css.right}>
          {panel ? (
            <Panel ticket={ticket} chosen={chosen} name={panel} onPanel={setPanel} onDone={close} />
          ) : (
            <>
              <MoneyPane ticket={ticket} onPanel={setPanel} />
              <HoldsPane ticket={ticket} onPanel={setPanel} />
              <PromisePane ticket={ticket} onPanel={setPanel} />
              <ActivityPane ticket={ticket} onPanel={setPanel} />
            </>
          )}
        </div>
      </div>
      <KeyHints
        hints={[
          { keys: [keysOf('go')], words: 'log a call or answer' },
          { keys: [keysOf('print')], words: 'print' },
          { keys: [keysOf('back')], words: 'back' },
        ]}
      />
    </div>
  );
}

/** Beside the word: held, unanswered, late, rush. */
function Chips({ ticket }: { ticket: Ticket }) {
  return (
    <span className={css.chips}>
      {ticket.chips.map((chip) =>
        chip.chip === 'rush' ? <Rush key="rush" /> : <Asked key={chip.chip}>{chip.words}</Asked>,
      )}
    </span>
  );
}
