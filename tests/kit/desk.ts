/** What most tests of the counter begin with: a customer by name, and a ticket checked in. */
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import type { CustomerId } from '#core/kernel/ids.ts';
import type { TestHost } from './test-host.ts';

type CheckIn = InputOf<App['tickets/check-in-ticket']>;
export type Casting = NonNullable<CheckIn['castings']>[number];

/** @throws Error when nobody of the practice shop goes by these words */
export async function customerNamed(t: TestHost, words: string): Promise<CustomerId> {
  const { customers } = await t.send('customers/find-customer', { text: words }, { as: 'TV' });
  const id = customers[0]?.customerId;
  if (id === undefined) throw new Error(`no customer ${words}`);
  return id;
}

/** An iron head of the classic four. */
export const IRON_HEAD: Casting = { type: 'LO-4', material: 'iron_grey', position: 'single' };
/** An aluminium head of the vee six. */
export const ALUMINIUM_HEAD: Casting = { type: 'BV-6', material: 'aluminium', position: 'left' };

/** Check in one iron head for the ferry line unless told otherwise; by the counter. */
export async function checkIn(
  t: TestHost,
  changes: Partial<CheckIn> = {},
  as = 'TV',
): Promise<OutputOf<App['tickets/check-in-ticket']>> {
  const customerId = await customerNamed(t, 'ferry');
  return t.send(
    'tickets/check-in-ticket',
    { customer: { customerId }, ticket: { orderNumber: 'FL-1' }, castings: [IRON_HEAD], ...changes },
    { as },
  );
}

type Made = OutputOf<App['tickets/check-in-ticket']>;

/** Hand everything back as it came: unworked, signed for, unpaid where something is open. */
export async function letGo(
  t: TestHost,
  made: Pick<Made, 'ticketId' | 'castings' | 'containers'>,
): Promise<OutputOf<App['racks/release-goods']>> {
  const bags = [...made.castings.flatMap((one) => one.containers), ...made.containers];
  const counts = new Map(
    t.db.sql<{ id: number; count: number | null }>('SELECT id, count FROM container').map((row) => [row.id, row.count]),
  );
  return t.send(
    'racks/release-unpaid',
    {
      ticketId: made.ticketId,
      castings: made.castings.map((one) => one.castingId),
      containers: bags.map(({ containerId }) => ({ containerId, counted: counts.get(containerId) ?? null })),
      takenBy: 'Wendolin Aubry',
      proof: 'claim_ticket',
      signedOnPaper: true,
      unworkedWhy: 'not wanted after all',
      reason: 'nothing was done',
    },
    { as: 'OB' },
  );
}
