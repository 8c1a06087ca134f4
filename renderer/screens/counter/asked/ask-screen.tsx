/** Making a question to the customer from what the bench found: in their words, with ways to go and what each costs. */
import { useDeferredValue, useState } from 'react';
import { useLocation } from 'wouter';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { addDays, isDay } from '#core/kernel/days.ts';
import { useAppCommand, useAppQuery, useClient } from '../../../client/use-app.ts';
import { momentAt, useFormat } from '../../../client/use-shop.ts';
import { askedAddress, ticketAddress } from '../../../kit/addresses.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { Tick } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Empty, PageName, Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import { Tag } from '../../../kit/tag.tsx';
import { readMinute } from '../check-in/request.ts';
import { nextKey } from '../check-in/typed.ts';
import css from './ask-screen.module.css';
import { type AskTyped, askInput, askMissing, emptyWay, type WayTyped } from './ask-typed.ts';
import { WayFields } from './way-fields.tsx';

type Ticket = OutputOf<App['tickets/get-ticket']>;

export function AskScreen({ number, tag }: { number: number /** The casting it is about. */; tag: number }) {
  const ticket = useAppQuery('tickets/get-ticket', { number });
  const bench = useAppQuery('floor/get-bench', { tag }, { ticket: ticket.data?.ticketId });
  if (ticket.error ?? bench.error) return <ErrorNote error={ticket.error ?? bench.error} />;
  const casting = ticket.data?.castings.find((one) => one.tagNo === tag);
  if (!ticket.data || !bench.data || !casting) return <Waiting />;
  return <Ask ticket={ticket.data} casting={casting} findings={bench.data.findings} />;
}

type AskProps = Readonly<{
  ticket: Ticket;
  casting: Ticket['castings'][number];
  findings: OutputOf<App['floor/get-bench']>['findings'];
}>;

function Ask({ ticket, casting, findings }: AskProps) {
  const format = useFormat();
  const client = useClient();
  const [, go] = useLocation();
  const open = findings.filter((finding) => finding.question === null);
  const [typed, setTyped] = useState<AskTyped>(() => ({
    castingId: casting.castingId,
    findings: open.map((finding) => finding.id),
    words: open.map((finding) => finding.words).join(' '),
    ways: [emptyWay('y1')],
    day: addDays(format.local(client.now()).day, 1),
    time: '17:00',
    ifNoAnswer: '',
  }));
  const set = (changes: Partial<AskTyped>) => setTyped((before) => ({ ...before, ...changes }));
  const setWay = (key: string, way: WayTyped) => set({ ways: typed.ways.map((one) => (one.key === key ? way : one)) });
  const priced = useDeferredValue(typed);
  const price = useAppQuery('approvals/get-added-work-price', askInput(ticket.ticketId, priced, format.settings), {
    keep: true,
  });
  const ask = useAppCommand('approvals/ask-added-work');
  const errors = ask.error?.reply.fields ?? {};
  const minute = readMinute(typed.time);
  const missing =
    askMissing(typed, format.settings) ?? (minute === null ? 'Write the time, for example 17:00.' : undefined);
  const send = async () => {
    if (missing || minute === null || !isDay(typed.day)) return;
    const asked = await ask.send({
      ...askInput(ticket.ticketId, typed, format.settings),
      expiresAt: momentAt(typed.day, minute, format.timeZone),
      ifNoAnswer: typed.ifNoAnswer.trim() || null,
    });
    if (!asked) return;
    const question = /-A(\d+)$/.exec(asked.number)?.[1];
    go((question ? askedAddress(ticket.number, Number(question)) : ticketAddress(ticket.number)).slice(1));
  };
  useAct('go', () => void send());
  useAct('leave', () => go(ticketAddress(ticket.number).slice(1)));
  return (
    <div className={css.page}>
      <PageName>{`Ask about ${casting.tagNo}`}</PageName>
      <Sheet title="What was found" note={`ticket ${ticket.number}, ${ticket.customer.name}`} scroll>
        <SheetBody>
          <Tag number={casting.tagNo} metal={casting.metal.class} size="m" />
          <b>{casting.title}</b>
          {open.length === 0 && <Empty>No finding of the bench waits for a question.</Empty>}
          {open.map((finding) => (
            <Tick
              key={finding.id}
              label={finding.words}
              checked={typed.findings.includes(finding.id)}
              onChange={(on) =>
                set({
                  findings: on ? [...typed.findings, finding.id] : typed.findings.filter((id) => id !== finding.id),
                })
              }
            />
          ))}
          <Field
            label="In words for the customer"
            value={typed.words}
            onChange={(words) => set({ words })}
            error={errors.words}
            lines={4}
            autoFocus
          />
          <div className={css.by}>
            <Field
              label="Answer by"
              type="date"
              value={typed.day}
              onChange={(day) => set({ day })}
              error={errors.expiresAt}
            />
            <Field label="at" value={typed.time} onChange={(time) => set({ time })} />
          </div>
          <Field
            label="With no answer"
            placeholder="we stop and keep it dry"
            value={typed.ifNoAnswer}
            onChange={(ifNoAnswer) => set({ ifNoAnswer })}
            error={errors.ifNoAnswer}
          />
        </SheetBody>
      </Sheet>
      <Sheet title="Ways to go" note="both stops are offered beside them" scroll>
        {typed.ways.map((way, position) => (
          <WayFields
            key={way.key}
            letter={String.fromCharCode(97 + position)}
            way={way}
            casting={casting}
            onChange={(changed) => setWay(way.key, changed)}
            onDrop={
              typed.ways.length > 1 ? () => set({ ways: typed.ways.filter((one) => one.key !== way.key) }) : undefined
            }
          />
        ))}
        <SheetBody>
          <Button onPress={() => set({ ways: [...typed.ways, emptyWay(nextKey(typed.ways, 'y'))] })}>
            Another way to go
          </Button>
        </SheetBody>
      </Sheet>
      <Sheet title="What it comes to" note="before tax" scroll>
        <SheetBody>
          <ErrorNote error={price.error} />
        </SheetBody>
        <dl className={css.sums}>
          {price.data?.options.map((option) => (
            <div key={option.letter}>
              <dt>
                {option.letter} {option.words}
              </dt>
              <dd>
                {option.kind === 'work' || option.kind === 'other_casting'
                  ? `${format.money(option.extra)} more, ${format.money(option.newTotal)} in all`
                  : `${format.money(option.newTotal)} to pay`}
              </dd>
              {option.pastCeiling !== null && option.pastCeiling > 0 && (
                <dd className={css.past}>past the ceiling by {format.money(option.pastCeiling)}</dd>
              )}
            </div>
          ))}
        </dl>
        <ErrorNote error={ask.error} fieldsShown={['words', 'expiresAt', 'ifNoAnswer']} />
        <SheetFoot>
          <GoButton keys={keysOf('go')} working={ask.pending} shut={missing} onPress={() => void send()}>
            Ask {ticket.customer.person?.name ?? ticket.customer.shortName}
          </GoButton>
          <Button keys={keysOf('leave')} href={ticketAddress(ticket.number)}>
            Not now
          </Button>
        </SheetFoot>
      </Sheet>
    </div>
  );
}
