/** The papers of a ticket: drawn, seen on the screen, then printed; the whole pile of a check-in at one stroke. */
import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { keepTyped, readTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { ticketAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { type DrawnPaper, PaperPreview } from '../../../kit/paper-preview.tsx';
import { Row, RowGroup, Rows } from '../../../kit/rows.tsx';
import { SaveReadings } from '../../../kit/save-readings.tsx';
import { Empty, PageName, Sheet, SheetFoot, SheetHead } from '../../../kit/sheet.tsx';
import { leftBehind } from '../check-in/left-behind.ts';
import { papersOf } from './papers-of.ts';
import css from './papers-screen.module.css';

type Document = OutputOf<App['documents/list-documents']>['documents'][number];

/** `pile`: straight from a check-in, everything is drawn at once if nothing was drawn yet. */
export function PapersScreen({ number, pile = false }: { number: number; pile?: boolean }) {
  const ticket = useAppQuery('tickets/get-ticket', { number });
  const id = ticket.data?.ticketId;
  const documents = useAppQuery(
    'documents/list-documents',
    { ticketId: id ?? 1 },
    { enabled: id !== undefined, ticket: id },
  );
  const sheet = useAppQuery('pricing/get-sheet', { ticketId: id ?? 1 }, { enabled: id !== undefined, ticket: id });
  const [, go] = useLocation();
  useAct('leave', () => go(ticketAddress(number).slice(1)));
  if (ticket.error) return <ErrorNote error={ticket.error} />;
  if (!ticket.data || documents.isPending) return <Waiting />;
  return (
    <Papers
      key={number}
      ticket={ticket.data}
      documents={documents.data?.documents ?? []}
      estimates={sheet.data?.estimates ?? []}
      pile={pile}
    />
  );
}

type PapersProps = Readonly<{
  ticket: OutputOf<App['tickets/get-ticket']>;
  documents: readonly Document[];
  estimates: readonly Readonly<{ id: number; number: string }>[];
  pile: boolean;
}>;

function Papers({ ticket, documents, estimates, pile }: PapersProps) {
  const format = useFormat();
  const one = useAppCommand('documents/print-paper');
  const set = useAppCommand('documents/print-set');
  const [left, setLeft] = useState(() => readTyped(leftBehind(ticket.number), isSentences) ?? []);
  const [chosen, setChosen] = useState<DrawnPaper | null>(null);
  const shown = chosen ?? documents[0] ?? null;
  const drawSet = async () => {
    const drawn = await set.send({ ticketId: ticket.ticketId });
    if (drawn?.papers[0]) setChosen(drawn.papers[0]);
  };
  useOnce(pile && documents.length === 0, drawSet);
  return (
    <RowGroup>
      <div className={css.page}>
        <PageName>{`Papers of ticket ${ticket.number}`}</PageName>
        <Sheet title={`Ticket ${ticket.number}`} note={ticket.customer.name} scroll>
          <Rows label="Papers to draw">
            {papersOf(ticket, estimates).map((offered) => (
              <Row
                key={offered.key}
                title={offered.words}
                onOpen={() => void one.send({ wish: offered.wish }).then((drawn) => drawn && setChosen(drawn))}
                end="draw it"
              />
            ))}
          </Rows>
          <SheetHead title="Drawn" end={documents.length > 0 ? `${documents.length}` : undefined} />
          {documents.length === 0 && <Empty>Papers that were drawn stand here, the newest first.</Empty>}
          <Rows label="Drawn">
            {documents.map((document) => (
              <Row
                key={document.documentId}
                title={document.words}
                note={`${format.at(document.at)}, ${document.by}. ${document.outcomeWords ?? 'drawn only'}${document.replaced ? ', a later one is there' : ''}`}
                onOpen={() => setChosen(document)}
                selected={document.documentId === shown?.documentId}
              />
            ))}
          </Rows>
          {ticket.castings.length > 0 && (
            <>
              <SheetHead title="Readings as a file" />
              <SaveReadings castings={ticket.castings} />
            </>
          )}
          {left.length > 0 && (
            <Notice
              kind="ask"
              acts={
                <Button
                  onPress={() => {
                    keepTyped(leftBehind(ticket.number), null);
                    setLeft([]);
                  }}
                >
                  Seen
                </Button>
              }
            >
              <b>The ticket is kept; this did not arrive. Add it on the ticket's page.</b>
              {left.map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
            </Notice>
          )}
          <ErrorNote error={one.error ?? set.error} />
          <SheetFoot>
            <Button working={set.pending} onPress={() => void drawSet()}>
              Draw the whole pile
            </Button>
            <Button href={ticketAddress(ticket.number)} keys={keysOf('leave')}>
              To the ticket
            </Button>
          </SheetFoot>
        </Sheet>
        {shown ? (
          <PaperPreview key={shown.documentId} paper={shown} working={one.pending} />
        ) : (
          <Sheet title="On the screen first">
            {set.pending || one.pending ? (
              <Waiting words="Drawing..." />
            ) : (
              <Empty>Choose a paper: it is shown here before it is printed.</Empty>
            )}
          </Sheet>
        )}
      </div>
      <KeyHints
        hints={[
          { keys: ['Up', 'Down'], words: 'move' },
          { keys: [keysOf('print')], words: 'print what is shown' },
          { keys: [keysOf('leave')], words: 'to the ticket' },
        ]}
      />
    </RowGroup>
  );
}

const isSentences = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((one) => typeof one === 'string');

/** Runs an act once, when it is first wanted. */
function useOnce(wanted: boolean, act: () => Promise<void>): void {
  const ran = useRef(false);
  useEffect(() => {
    if (!wanted || ran.current) return;
    ran.current = true;
    void act();
  });
}
