/** Their answer to the ways offered: yes to one, no to all, or nobody answered and when to try again. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { useMay } from '../../../client/use-me.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Sheet, SheetBody } from '../../../kit/sheet.tsx';
import { AcceptAnyway } from '../parts/accept-anyway.tsx';
import { ANSWER_FIELDS, AnswerFields, answerInput, answerMissing, startAnswer } from '../parts/answer-fields.tsx';
import type { Question, Way } from './question.ts';
import css from './their-answer.module.css';

export function TheirAnswer({
  ticket,
  question,
  way,
}: {
  ticket: OutputOf<App['tickets/get-ticket']>;
  question: Question;
  way: Way | undefined;
}) {
  const format = useFormat();
  const may = useMay();
  const record = useAppCommand('approvals/record-answer');
  const log = useAppCommand('tickets/log-contact');
  const first = question.mayApprove[0];
  const [answer, setAnswer] = useState(() =>
    startAnswer(
      first ? { personId: first.personId, name: first.name } : ticket.customer.person,
      first?.numbers[0] ?? ticket.customer.phone,
    ),
  );
  const [again, setAgain] = useState('');
  const missing = answerMissing(answer);
  const done = question.closedAt !== null || question.options.some((option) => option.answer === 'yes');
  const mayRecord = may.has('approvals:record');
  const yes = () => {
    if (way?.id === null || way === undefined || missing) return;
    void record.send({ question: { optionId: way.id }, answer: 'yes', ...answerInput(answer) });
  };
  useAct('go', mayRecord && !done ? yes : undefined);
  return (
    <Sheet title="Their answer" scroll stop={done || !mayRecord}>
      <SheetBody>
        {question.answers.map((one) => (
          <p key={one.id}>
            <b>
              {one.answer} {one.aboutWords}
            </b>
            , {format.money(one.amount)}: {one.saidBy}, {format.at(one.saidAt)}. "{one.words}"
            {one.withdrawn && ' Taken back.'}
          </p>
        ))}
        {mayRecord && !done && (
          <>
            <AnswerFields
              customerId={ticket.customer.customerId}
              typed={answer}
              onChange={setAnswer}
              errors={record.error?.reply.fields ?? {}}
            />
            <ErrorNote error={record.error ?? log.error} fieldsShown={ANSWER_FIELDS} />
            {way && way.id !== null && (
              <AcceptAnyway
                refusal={record.error}
                answer={{ question: { optionId: way.id }, answer: 'yes', ...answerInput(answer) }}
              />
            )}
            <div className={css.acts}>
              <GoButton
                wide
                keys={keysOf('go')}
                working={record.pending}
                shut={way?.id === null || !way ? 'Choose a way.' : missing}
                onPress={yes}
              >
                Yes to {way?.letter ?? ''}
              </GoButton>
              <Button
                wide
                working={record.pending}
                shut={missing && 'As above.'}
                onPress={() =>
                  void record.send({ question: { addedWorkId: question.id }, answer: 'no', ...answerInput(answer) })
                }
              >
                No to all of it
              </Button>
            </div>
            <Field label="No answer: try again at" placeholder="14:00" value={again} onChange={setAgain} />
            <Button
              kind="out"
              working={log.pending}
              onPress={() =>
                void log.send({
                  ticketId: ticket.ticketId,
                  customerId: ticket.customer.customerId,
                  personId: answer.personId,
                  means: answer.means === 'email' ? 'email' : answer.means === 'text' ? 'text' : 'call',
                  numberOrAddress: answer.numberCalled.trim() || null,
                  about: 'answer',
                  words: `No answer about ${question.number}${again.trim() === '' ? '' : `, try again at ${again.trim()}`}.`,
                  reached: false,
                })
              }
            >
              No answer{again.trim() === '' ? '' : `, try again at ${again.trim()}`}
            </Button>
          </>
        )}
        <p className={css.tries}>
          Each try is kept with time and name. Tries so far: {question.tries.length}
          {question.tries.map((one) => `, ${format.at(one.at)} ${one.by}`).join('')}.
        </p>
      </SheetBody>
    </Sheet>
  );
}
