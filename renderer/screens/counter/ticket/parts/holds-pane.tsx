/** What the ticket waits for, why and since when; whoever settled it closes it in words. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { useMay } from '../../../../client/use-me.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { askedAddress } from '../../../../kit/addresses.ts';
import { Button } from '../../../../kit/button.tsx';
import { Field } from '../../../../kit/field.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { Row, Rows } from '../../../../kit/rows.tsx';
import { Sheet } from '../../../../kit/sheet.tsx';
import { Asked, Hold } from '../../../../kit/state.tsx';
import type { PanelName } from '../panel-names.ts';
import type { Ticket } from '../ticket-shapes.ts';
import css from './holds-pane.module.css';

export function HoldsPane({ ticket, onPanel }: { ticket: Ticket; onPanel: (name: PanelName) => void }) {
  const may = useMay();
  const format = useFormat();
  const [closing, setClosing] = useState<number | null>(null);
  const open = ticket.questions.filter((question) => !question.answered);
  if (ticket.holds.length + open.length === 0) return null;
  return (
    <Sheet
      title="Waits for"
      end={may.has('floor:work') && <Button onPress={() => onPanel('hold')}>Another hold</Button>}
    >
      <Rows label="Waits for">
        {open.map((question) => (
          <Row
            key={question.addedWorkId}
            href={askedAddress(ticket.number, question.number)}
            title={<b>{question.words}</b>}
            note={`${question.label}, ${format.money(question.extra)} more, answer by ${format.at(question.expiresAt)}`}
            end={<Asked>{question.askedAt ? 'log the answer' : 'not asked yet'}</Asked>}
          />
        ))}
        {ticket.holds.map((hold) => (
          <Row
            key={hold.id}
            title={
              <Hold frame={hold.identity}>
                {hold.reasonWords}
                {hold.days > 0 && `, ${hold.days} ${hold.days === 1 ? 'day' : 'days'}`}
              </Hold>
            }
            note={[
              hold.onWhat,
              hold.words,
              hold.owner ? `owner ${hold.owner.name}` : `nobody on it (${hold.ownerRole})`,
            ]
              .filter(Boolean)
              .join(', ')}
            onOpen={may.has('floor:work') ? () => setClosing(closing === hold.id ? null : hold.id) : undefined}
            end={may.has('floor:work') ? 'close it' : undefined}
          />
        ))}
      </Rows>
      {closing !== null && <CloseHold key={closing} hold={closing} onDone={() => setClosing(null)} />}
    </Sheet>
  );
}

function CloseHold({ hold, onDone }: { hold: number; onDone: () => void }) {
  const close = useAppCommand('floor/close-hold');
  const [words, setWords] = useState('');
  return (
    <div className={css.form}>
      <Field
        label="How was it settled?"
        value={words}
        onChange={setWords}
        error={close.error?.reply.fields?.words}
        autoFocus
      />
      <ErrorNote error={close.error} fieldsShown={['words']} />
      <Button
        working={close.pending}
        onPress={() => void close.send({ holdId: hold, words }).then((done) => done && onDone())}
      >
        Close this hold
      </Button>
    </div>
  );
}
