/** Everything that decides at the door, read once for the page and for the commands. */
import { getCustomer } from '../../customers/store.ts';
import type { QueryCtx } from '../../host/implement.ts';
import type { DoorItem } from '../../intake/compute.ts';
import type { ArrivalItemId, CastingId, TicketId } from '../../kernel/ids.ts';
import type { Identity } from '../../racks/store/goods.ts';
import { readIdentities } from '../../racks/store/goods.ts';
import { getShop, settingsOf } from '../../shop/store.ts';
import type { TicketFacts } from '../../state/compute/facts.ts';
import { type TicketNow, ticketNow } from '../../state/compute/tickets.ts';
import { readAccountUse } from '../../state/store/account.ts';
import { loadFacts } from '../../state/store/load-facts.ts';
import { accountYes } from '../../tickets/store.ts';
import { castingStops, doorMoney } from '../compute.ts';

/** What is said about a line at the door. */
export type Said = Readonly<{ count: number; fate: NonNullable<DoorItem['fate']>; explained: string | null }>;

export function readDoor(ctx: QueryCtx, ticketId: TicketId) {
  const settings = settingsOf(getShop(ctx.db));
  const facts = loadFacts(ctx.db, ticketId);
  const goods = readIdentities(ctx.db, ticketId, settings);
  return {
    ticketId,
    settings,
    facts,
    now: ticketNow(facts),
    goods,
    customer: getCustomer(ctx.db, facts.ticket.customerId),
  };
}
export type Door = ReturnType<typeof readDoor>;

/** A line as the rule sees it: what was said now, else what stands, else what follows from assembly or a leaving bag. */
export function doorItem(
  door: Door,
  casting: Identity,
  item: Identity['items'][number],
  said: Said | undefined,
  bags: ReadonlySet<number>,
): DoorItem {
  const out = item.counts.filter((one) => one.stage === 'out').at(-1);
  const explained = [...item.counts].reverse().find((one) => one.explained !== null)?.explained ?? null;
  const usual = usualFate(door, casting, item, bags);
  return {
    words: item.words,
    counted: item.counted,
    missing: item.missing,
    out: said?.count ?? out?.count ?? (usual === null ? null : item.counted),
    explained: said?.explained ?? explained,
    fate: said?.fate ?? item.fate ?? usual,
  };
}

/**
 * The end of a line that nobody has to say: a leaving bag holds it, assembly closed it in the casting, or the casting goes as
 * it came. Null: somebody says it.
 */
function usualFate(
  { now }: Door,
  casting: Identity,
  item: Identity['items'][number],
  bags: ReadonlySet<number>,
): DoorItem['fate'] {
  if (item.containerId !== null) return bags.has(item.containerId) ? 'in_bag' : null;
  const { facts } = now.known;
  const own = facts.operations.filter((one) => one.castingId === casting.castingId);
  const assembled = own.some((one) => one.kind.gate === 'assemble' && one.finishedAt !== null);
  const untouched = !now.operations.some((one) => one.castingId === casting.castingId && one.begun);
  return assembled || untouched || item.boltedInPlace ? 'in_casting' : null;
}

type Leaving = Readonly<{
  said: ReadonlyMap<ArrivalItemId, Said>;
  bags: ReadonlySet<number>;
  unworkedWhy: string | null;
  leadSays: boolean;
}>;

/** Why a casting cannot leave; empty when it may. */
export function stopsOf(door: Door, casting: Identity, leaving: Leaving): string[] {
  const state = door.now.castings.find((one) => one.id === casting.castingId);
  const fact = door.facts.castings.find((one) => one.id === casting.castingId);
  return castingStops({
    tag: casting.tagNo,
    out: casting.outAt !== null,
    settled: state?.settled ?? false,
    unworkedWhy: leaving.unworkedWhy ?? fact?.unworkedWhy ?? null,
    workBegun: state?.operations.some((one) => one.begun) ?? false,
    leadSays: leaving.leadSays,
    identityInDoubt: inDoubt(door.facts, casting.castingId),
    items: casting.items.map((item) => doorItem(door, casting, item, leaving.said.get(item.itemId), leaving.bags)),
  });
}

/** An open hold of identity on the casting or on its ticket. */
export const inDoubt = (facts: TicketFacts, casting: CastingId): boolean =>
  facts.holds.some((hold) => hold.reason === 'identity' && (hold.castingId === null || hold.castingId === casting));

/** Money at the door for these castings; `last`: nothing of the ticket stays, so charges of the ticket as a whole count too. */
export function moneyOf(ctx: QueryCtx, door: Door, castings: readonly CastingId[], last: boolean) {
  const { facts, customer, settings, ticketId } = door;
  const terms = ctx.db.one(ctx.db.q.selectFrom('terms').select(['kind', 'words']).where('id', '=', customer.terms_id));
  const hasTerms = terms !== undefined && terms.kind !== 'on_receipt';
  return doorMoney(
    {
      unbilledLines: unbilled(door.now, castings, last),
      balance: facts.money.balance,
      hasTerms,
      termsWords: terms?.words ?? '',
      onStop: customer.on_stop_at !== null,
      overLimit: hasTerms && facts.money.balance > 0 && readAccountUse(ctx.db, customer.id, ctx.today).state === 'over',
      yes: accountYes(ctx.db, ticketId, 'release'),
    },
    settings,
  );
}

/** Charges to be paid for what leaves that stand on no invoice. */
function unbilled(now: TicketNow, castings: readonly CastingId[], last: boolean): number {
  const { facts } = now.known;
  if (last) return facts.money.unbilledLines;
  return facts.lines.filter(
    (line) =>
      !(line.withdrawn || line.billed || line.answer === 'no') &&
      (line.optionId === null || line.answer === 'yes') &&
      line.amount !== 0 &&
      line.castingIds.some((id) => castings.includes(id as CastingId)),
  ).length;
}
