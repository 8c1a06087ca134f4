/** What the find box found: first what to say to the caller, then what to do, then what else matches. */
import { useDeferredValue, useState } from 'react';
import { useLocation } from 'wouter';
import { useAppQuery } from '../../client/use-app.ts';
import { useMay } from '../../client/use-me.ts';
import { benchAddress, CHECK_IN, checkInFor, ticketAddress } from '../../kit/addresses.ts';
import { Button, GoButton } from '../../kit/button.tsx';
import { KeyHints } from '../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../kit/keyboard.ts';
import { ErrorNote } from '../../kit/notice.tsx';
import { Waiting } from '../../kit/pane.tsx';
import { Row, RowGroup, Rows } from '../../kit/rows.tsx';
import { PageName, Sheet, SheetFoot } from '../../kit/sheet.tsx';
import { Tag } from '../../kit/tag.tsx';
import css from './find-pane.module.css';
import type { Found } from './found.ts';
import { CallForm } from './parts/call-form.tsx';
import { FoundCustomers } from './parts/found-customers.tsx';
import { FoundTicketRow } from './parts/found-ticket-row.tsx';
import { Hits } from './parts/hits.tsx';

const ignore = (): void => undefined;

export function FindPane({ text, onLeave }: { text: string; onLeave: () => void }) {
  const asked = useDeferredValue(text.slice(0, 10_000));
  const { data: found, error } = useAppQuery('search/find-anything', { text: asked }, { keep: true });
  if (error) return <ErrorNote error={error} />;
  if (!found) return <Waiting words="Looking..." />;
  return <Results found={found} onLeave={onLeave} />;
}

function Results({ found, onLeave }: { found: Found; onLeave: () => void }) {
  const may = useMay();
  const [, go] = useLocation();
  const [at, setAt] = useState<number | null>(null);
  const [calling, setCalling] = useState(false);
  const chosen = found.tickets.find((ticket) => ticket.ticketId === at) ?? found.tickets[0];
  const speaks = may.has('tickets:see');
  const call = found.call;
  const openChosen = () => {
    if (!chosen) return;
    go((speaks ? ticketAddress(chosen.number) : benchAddress(chosen.tags[0]?.tag ?? 0)).slice(1));
    onLeave();
  };
  useAct('go', may.has('tickets:edit') && call && !calling ? () => setCalling(true) : ignore);
  // Find lies over a page that must not answer in its place.
  useAct('print', ignore);
  useAct('another-casting', ignore);
  useAct('leave', calling ? () => setCalling(false) : onLeave);
  useAct('check-in', call ? () => go(checkInFor(call.customerId).slice(1)) : undefined);
  const nothing = found.tickets.length + found.customers.length + found.castings.length === 0;
  return (
    <RowGroup>
      <PageName>Find</PageName>
      <div className={css.found} data-find-results="" aria-live="polite">
        <Sheet
          title={speaks ? 'Say this' : 'Found'}
          note={speaks ? 'while they are on the line' : undefined}
          end={found.words}
          scroll
        >
          {nothing && (
            <div className={css.nothing}>
              <p>{found.words}</p>
              {speaks && <GoButton href={CHECK_IN}>Check in castings</GoButton>}
            </div>
          )}
          <FoundCustomers customers={found.customers} />
          <Rows label="Tickets">
            {found.tickets.map((ticket) => (
              <FoundTicketRow
                key={ticket.ticketId}
                ticket={ticket}
                selected={ticket === chosen}
                href={speaks ? ticketAddress(ticket.number) : ticket.tags[0] && benchAddress(ticket.tags[0].tag)}
                onFocus={() => setAt(ticket.ticketId)}
                onOpen={onLeave}
              />
            ))}
          </Rows>
          {calling && call && (
            <CallForm
              call={{ ...call, ticketId: chosen?.ticketId ?? call.ticketId }}
              about={chosen ? `ticket ${chosen.number}` : 'no ticket'}
              onDone={() => setCalling(false)}
            />
          )}
          {!nothing && speaks && !calling && (
            <Acts call={call} chosen={chosen} onCall={() => setCalling(true)} onOpen={openChosen} />
          )}
        </Sheet>
        {found.castings.length > 0 && <AlsoMatches found={found} speaks={speaks} onOpen={onLeave} />}
      </div>
      <KeyHints
        hints={[
          { keys: ['Up', 'Down'], words: 'move' },
          { keys: ['Enter'], words: 'open' },
          { keys: ['Esc'], words: 'back to what you were doing' },
        ]}
      />
    </RowGroup>
  );
}

function Acts({
  call,
  chosen,
  onCall,
  onOpen,
}: {
  call: Found['call'];
  chosen: Found['tickets'][number] | undefined;
  onCall: () => void;
  onOpen: () => void;
}) {
  const may = useMay();
  return (
    <SheetFoot>
      {call && may.has('tickets:edit') && (
        <GoButton keys={keysOf('go')} onPress={onCall}>
          Log this call
        </GoButton>
      )}
      {chosen && (
        <Button keys="Enter" onPress={onOpen}>
          Open ticket {chosen.number}
        </Button>
      )}
      {call && (
        <Button keys={keysOf('check-in')} href={checkInFor(call.customerId)}>
          New check-in for them
        </Button>
      )}
    </SheetFoot>
  );
}

function AlsoMatches({ found, speaks, onOpen }: { found: Found; speaks: boolean; onOpen: () => void }) {
  return (
    <Sheet title="Also matches" note={found.text} end={found.more ? 'more match: type more of it' : undefined} scroll>
      {/* A press on a link inside leads to its page; find then closes over it. */}
      <div onClickCapture={onOpen} role="presentation">
        <Rows label="Castings">
          {found.castings.map((casting) => (
            <Row
              key={casting.castingId}
              href={speaks ? ticketAddress(casting.ticketNumber) : benchAddress(casting.tag)}
              lead={<Tag number={casting.tag} metal={casting.metal.class} />}
              title={
                <>
                  <Hits text={casting.line} hits={casting.line === casting.matched ? casting.hits : []} />,{' '}
                  {casting.customer}
                </>
              }
              note={casting.second}
              end={casting.word}
            />
          ))}
        </Rows>
      </div>
    </Sheet>
  );
}
