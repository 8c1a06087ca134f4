/** A quote on the telephone: who asks, what for, and the price of the day; kept as an enquiry with an estimate. */
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import type { Client } from '../../../client/client.ts';
import { useAppCommand, useClient } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { ticketAddress } from '../../../kit/addresses.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Empty, PageName, Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import { addCasting, castingWords, changeCasting } from '../check-in/changes.ts';
import { usePriceAndPromise } from '../check-in/hooks/use-check-in.ts';
import { TypeField } from '../check-in/parts/casting-identity.tsx';
import { WhoFields } from '../check-in/parts/who-fields.tsx';
import { WorkAsked } from '../check-in/parts/work-asked.tsx';
import type { Quote } from '../check-in/quote.ts';
import { customerInput } from '../check-in/request.ts';
import { type CheckInTyped, EMPTY_CHECK_IN, isBegun, isCheckIn } from '../check-in/typed.ts';
import { chargesOf, wantedWords } from './quote-charges.ts';
import css from './quote-screen.module.css';

/** The lines as they were said, and the estimate that holds them. */
async function keepLines(client: Client, ticketId: number, quote: Quote): Promise<void> {
  const charges = chargesOf(quote);
  for (const charge of charges) await client.call('pricing/add-charge', { ticketId, charge });
  if (charges.length > 0) await client.call('pricing/send-estimate', { ticketId });
}

/** What an enquiry takes of what is typed. */
const enquiryInput = (typed: CheckInTyped): InputOf<App['tickets/open-enquiry']> => ({
  customer: customerInput(typed),
  engineWords: typed.castings[0]?.typeText.trim() || null,
  wantedWords: wantedWords(typed),
  useWords: typed.use.trim() || null,
  historyWords: typed.history.trim() || null,
  orderNumber: typed.orderNumber.trim() || null,
});

export function QuoteScreen() {
  const client = useClient();
  const format = useFormat();
  const [, go] = useLocation();
  const [typed, set] = useTyped<CheckInTyped>('quote', EMPTY_CHECK_IN, isCheckIn);
  const price = usePriceAndPromise(typed, set);
  const open = useAppCommand('tickets/open-enquiry');
  const [half, setHalf] = useState<number | null>(null);
  const missing =
    `${typed.customer.name}${typed.customer.phone}`.trim() === '' ? 'Write a name or a telephone.' : undefined;
  const keep = async () => {
    if (missing) return;
    const made = await open.send(enquiryInput(typed));
    if (!made) return;
    // The enquiry is kept from here on; a line that does not arrive is seen and added on its page.
    setHalf(made.number);
    if (price.quote) await keepLines(client, made.ticketId, price.quote).catch(() => undefined);
    set(() => EMPTY_CHECK_IN);
    go(ticketAddress(made.number).slice(1));
  };
  const leave = () => go('/counter');
  useAct('go', () => void keep());
  useAct('leave', leave);
  useAct('another-casting', () => set(addCasting));
  return (
    <div className={css.page}>
      <PageName>Quote on the phone</PageName>
      <WhoFields
        typed={typed}
        set={set}
        troubles={open.error ? { customer: open.error.reply.fields?.['customer.add.name'] ?? '' } : {}}
      />
      <div className={css.columns}>
        <Sheet title="What it is for" scroll>
          <SheetBody>
            {typed.castings.length === 0 && <Empty>Add a casting: its type and metal are enough for a price.</Empty>}
            {typed.castings.map((casting) => (
              <fieldset key={casting.key} className={css.casting}>
                <legend>{castingWords(typed, casting)}</legend>
                <TypeField
                  casting={casting}
                  change={(changes) => set((before) => changeCasting(before, casting.key, changes))}
                  troubles={{}}
                />
                <Choice
                  label="Metal"
                  options={[
                    { value: 'iron_grey', words: 'Iron' },
                    { value: 'aluminium', words: 'Aluminium' },
                    { value: 'not_known', words: 'Not known' },
                  ]}
                  value={
                    casting.material === 'iron_grey' ||
                    casting.material === 'aluminium' ||
                    casting.material === 'not_known'
                      ? casting.material
                      : null
                  }
                  onChange={(material) => set((before) => changeCasting(before, casting.key, { material }))}
                />
              </fieldset>
            ))}
            <Button keys={keysOf('another-casting')} onPress={() => set(addCasting)}>
              {typed.castings.length === 0 ? 'A casting' : 'Another casting'}
            </Button>
          </SheetBody>
        </Sheet>
        <Sheet
          title="Work asked for"
          end={price.suggestion?.comfortable && `could be done ${price.suggestion.comfortable.words}`}
          scroll
        >
          <WorkAsked typed={typed} set={set} quote={price.quote} error={price.quoteError} />
          <ErrorNote error={open.error} />
          <SheetFoot>
            <Button keys={keysOf('leave')} onPress={leave}>
              Set aside
            </Button>
            <GoButton
              keys={keysOf('go')}
              working={open.pending || half !== null}
              shut={isBegun(typed) ? missing : 'Write who asks.'}
              onPress={() => void keep()}
            >
              {price.quote ? `Keep the quote of ${format.money(price.quote.bill.figures.total)}` : 'Keep the enquiry'}
            </GoButton>
          </SheetFoot>
        </Sheet>
      </div>
      <KeyHints
        hints={[
          { keys: ['Tab'], words: 'next field' },
          { keys: [keysOf('leave')], words: 'set aside, nothing is lost' },
        ]}
      />
    </div>
  );
}
