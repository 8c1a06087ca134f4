/** The account of a customer at the counter: words, and the hold that waits for a named yes. */

import { stopOf } from '../../customers/store/read.ts';
import { getCustomer } from '../../customers/store.ts';
import type { Ctx, QueryCtx } from '../../host/implement.ts';
import { addDays } from '../../kernel/days.ts';
import type { CustomerId, TicketId } from '../../kernel/ids.ts';
import type { Cents } from '../../kernel/units.ts';
import { getShop, settingsOf } from '../../shop/store.ts';
import { readAccountUse } from '../../state/store/account.ts';
import { nextOpenDay } from '../../tickets/compute/open-days.ts';
import { calendarOf } from '../../tickets/store.ts';
import { type AccountState, accountState } from '../compute.ts';

/** @param more what is about to be added, with tax */
export function readAccount(ctx: QueryCtx, customer: CustomerId, more: readonly Cents[] = []) {
  const row = getCustomer(ctx.db, customer);
  const use = readAccountUse(ctx.db, customer, ctx.today, more);
  const state = accountState({ stopWords: stopOf(row, ctx.local), use }, settingsOf(getShop(ctx.db)));
  return { row, use, state };
}

/** Work waits: the casting is tagged and recorded, nothing is started or ordered before a named yes. */
export function holdForAccount(ctx: Ctx, ticket: TicketId, account: AccountState): void {
  if (!account.waitsForYes) return;
  ctx.db.add('hold', {
    ticket_id: ticket,
    reason: 'money',
    owner_role: 'counter',
    follow_up_on: nextOpenDay(calendarOf(ctx.db), addDays(ctx.today, 1)),
    words: account.words,
  });
}
