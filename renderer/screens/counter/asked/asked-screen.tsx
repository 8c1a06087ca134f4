/** Added work: what was found, the ways to go side by side, and their answer. */
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { fileUrl } from '../../../client/transport.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { papersAddress, ticketAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { PageName, Sheet, SheetBody, TitleBlock, TitleCell } from '../../../kit/sheet.tsx';
import { Tag } from '../../../kit/tag.tsx';
import css from './asked-screen.module.css';
import type { Question } from './question.ts';
import { TheirAnswer } from './their-answer.tsx';
import { WaysToGo } from './ways-to-go.tsx';

type Ticket = OutputOf<App['tickets/get-ticket']>;

/** By the numbers people say: ticket 10482, question 2. */
export function AskedScreen({ number, question }: { number: number; question: number }) {
  const ticket = useAppQuery('tickets/get-ticket', { number });
  const found = ticket.data?.questions.find((one) => one.number === question);
  const asked = useAppQuery(
    'approvals/get-question',
    { addedWorkId: found?.addedWorkId ?? 1 },
    { enabled: found !== undefined, ticket: ticket.data?.ticketId },
  );
  const [, go] = useLocation();
  useAct('leave', () => go(ticketAddress(number).slice(1)));
  useAct('print', () => go(papersAddress(number).slice(1)));
  if (ticket.error ?? asked.error) return <ErrorNote error={ticket.error ?? asked.error} />;
  if (ticket.data && !found) {
    return (
      <Notice kind="wrong" acts={<Button href={ticketAddress(number)}>To ticket {number}</Button>}>
        Ticket {number} has no question A{question}. Look at the ticket.
      </Notice>
    );
  }
  if (!ticket.data || !asked.data) return <Waiting />;
  return <AskedPage ticket={ticket.data} question={asked.data} />;
}

function AskedPage({ ticket, question }: { ticket: Ticket; question: Question }) {
  const format = useFormat();
  const open = question.options.filter((option) => option.id !== null && option.answer === null);
  const answered = question.options.find((option) => option.answer === 'yes');
  const [chosen, setChosen] = useState<number | null>(null);
  const way = question.options.find((option) => option.id === chosen) ?? answered ?? open[0] ?? question.options[0];
  const casting = ticket.castings.find((one) => one.castingId === question.castingId);
  const first = question.mayApprove[0];
  const found = question.findings[0];
  return (
    <div className={css.page}>
      <PageName>{`Added work ${question.number}`}</PageName>
      <TitleBlock columns="auto minmax(0, 1.4fr) minmax(0, 1fr) minmax(0, 1fr) auto">
        <TitleCell label="Added work" big>
          {question.number}
        </TitleCell>
        <TitleCell label="Customer" note={ticket.fields.orderNumber ? `order ${ticket.fields.orderNumber}` : undefined}>
          {ticket.customer.name}
        </TitleCell>
        <TitleCell
          label="Who may say yes"
          note={
            first &&
            `${first.numbers[0] ?? ''}, ${first.limit === null ? 'any amount' : `up to ${format.money(first.limit)}`}`
          }
        >
          {first?.name ?? (question.anyoneMayApprove ? 'anyone of theirs' : 'nobody named')}
        </TitleCell>
        <TitleCell label="Found" note={question.operationWords}>
          {found ? `${format.at(found.at)}, ${found.by}` : format.at(question.askedAt)}
        </TitleCell>
        <TitleCell label="Answer by">{format.at(question.expiresAt)}</TitleCell>
      </TitleBlock>
      <div className={css.columns}>
        <Sheet title="What was found" scroll stop>
          <SheetBody>
            <Tag number={question.tag} metal={casting?.metal.class} size="m" />
            <b>{casting?.title}</b>
            <p className={css.lead}>{question.words}</p>
            {question.findings.map((one) => (
              <p key={one.id}>
                {one.words}
                {one.place && `, ${one.place}`} ({one.by})
              </p>
            ))}
            <div className={css.photos}>
              {question.photos.map((photo) => (
                <img key={photo.sha256} src={fileUrl(photo.sha256)} alt={photo.caption ?? 'What was found'} />
              ))}
            </div>
            <p className={css.quiet}>
              {question.photos.length} {question.photos.length === 1 ? 'photo' : 'photos'} kept. Said to the customer in
              these words.
            </p>
            {question.ifNoAnswer && <p className={css.quiet}>With no answer: {question.ifNoAnswer}</p>}
          </SheetBody>
        </Sheet>
        <WaysToGo question={question} chosen={way} onChoose={setChosen} />
        <TheirAnswer key={question.version} ticket={ticket} question={question} way={way} />
      </div>
      <KeyHints
        hints={[
          { keys: [keysOf('go')], words: 'keep their yes' },
          { keys: [keysOf('print')], words: 'print the request' },
          { keys: [keysOf('leave')], words: 'to the ticket' },
        ]}
      />
    </div>
  );
}
