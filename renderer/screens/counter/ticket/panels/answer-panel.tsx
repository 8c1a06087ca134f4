/** Their answer to the estimate: yes, yes to part, or no. Questions about added work have a page of their own. */
import { useState } from 'react';
import { useAppCommand, useAppQuery } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { askedAddress } from '../../../../kit/addresses.ts';
import { Choice, Tick } from '../../../../kit/choice.tsx';
import { FormSheet } from '../../../../kit/form-sheet.tsx';
import { Notice } from '../../../../kit/notice.tsx';
import { Waiting } from '../../../../kit/pane.tsx';
import { Row, Rows } from '../../../../kit/rows.tsx';
import { Empty, Sheet } from '../../../../kit/sheet.tsx';
import { AcceptAnyway } from '../../parts/accept-anyway.tsx';
import { ANSWER_FIELDS, AnswerFields, answerInput, answerMissing, startAnswer } from '../../parts/answer-fields.tsx';
import type { PanelProps } from '../ticket-shapes.ts';

type Said = 'yes' | 'part' | 'no';

export function AnswerPanel({ ticket, onDone }: PanelProps) {
  const { data: sheet } = useAppQuery('pricing/get-sheet', { ticketId: ticket.ticketId }, { ticket: ticket.ticketId });
  if (!sheet) return <Waiting />;
  const estimate = sheet.estimates.toReversed().find((one) => one.answer === null);
  if (estimate) return <EstimateAnswer ticket={ticket} onDone={onDone} estimate={estimate} />;
  const open = ticket.questions.filter((question) => !question.answered);
  return (
    <Sheet title="Their answer" scroll>
      {open.length === 0 && (
        <Empty>Nothing waits for an answer. Send an estimate first, or write down a ceiling.</Empty>
      )}
      <Rows label="Questions">
        {open.map((question) => (
          <Row
            key={question.addedWorkId}
            href={askedAddress(ticket.number, question.number)}
            title={<b>{question.label}</b>}
            note={question.words}
          />
        ))}
      </Rows>
    </Sheet>
  );
}

function EstimateAnswer({
  ticket,
  onDone,
  estimate,
}: PanelProps &
  Readonly<{ estimate: Readonly<{ id: number; number: string; beforeTax: number; outdated: boolean }> }>) {
  const format = useFormat();
  const command = useAppCommand('approvals/record-answer');
  const { data: asked } = useAppQuery('pricing/get-estimate', { estimateId: estimate.id }, { ticket: ticket.ticketId });
  const [said, setSaid] = useState<Said>('yes');
  const [chosen, setChosen] = useState<readonly number[]>([]);
  const [answer, setAnswer] = useState(() => startAnswer(ticket.customer.person, ticket.customer.phone));
  const errors = command.error?.reply.fields ?? {};
  const lines = (asked?.lines ?? []).flatMap((line) =>
    line.lineId === null ? [] : [{ ...line, lineId: line.lineId }],
  );
  const input = {
    question: { estimateId: estimate.id },
    answer: said,
    lines: said === 'part' ? [...chosen] : [],
    ...answerInput(answer),
  };
  const none = said === 'part' && chosen.length === 0 ? 'Tick what they said yes to.' : undefined;
  return (
    <FormSheet
      title={`Answer to estimate ${estimate.number}`}
      note={`${format.money(estimate.beforeTax)} before tax`}
      act={said === 'yes' ? `Yes to ${format.money(estimate.beforeTax)}` : said === 'no' ? 'No' : 'Yes to part'}
      command={command}
      shut={none ?? answerMissing(answer)}
      fieldsShown={ANSWER_FIELDS}
      onDone={onDone}
      onGo={() => void command.send(input).then((kept) => kept && onDone())}
    >
      {estimate.outdated && (
        <Notice kind="ask">Lines changed since it was sent. Send a new revision if they should be in it.</Notice>
      )}
      <Choice<Said>
        label="They say"
        options={[
          { value: 'yes', words: 'Yes' },
          { value: 'part', words: 'Yes to part' },
          { value: 'no', words: 'No' },
        ]}
        value={said}
        onChange={setSaid}
      />
      {said === 'part' &&
        lines.map((line) => (
          <Tick
            key={line.lineId}
            label={`${line.tag ? `${line.tag} ` : ''}${line.words}, ${format.money(line.amount)}`}
            checked={chosen.includes(line.lineId)}
            onChange={(on) =>
              setChosen((before) => (on ? [...before, line.lineId] : before.filter((id) => id !== line.lineId)))
            }
          />
        ))}
      <AnswerFields customerId={ticket.customer.customerId} typed={answer} onChange={setAnswer} errors={errors} />
      <AcceptAnyway refusal={command.error} answer={input} onDone={onDone} />
    </FormSheet>
  );
}
