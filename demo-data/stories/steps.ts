/** Steps that most stories share: readings of heights, and the way from the bench to the door. */
import type { ExpectedStory } from './expected.ts';
import type { Reading, Story } from './kit.ts';

type Shims = NonNullable<ExpectedStory['shims']>;

/** The heights as they were read. */
export const heightReadings = (shims: Shims | undefined, tool: string): Reading[] =>
  (shims?.valves ?? []).map((v) => ({
    quantity: 'installed-height',
    spot: v.valve,
    typed: v.measured,
    unit: shims?.unit ?? 'mm',
    tool,
  }));

/** The vacuum of each port, pulled to 25 inHg; `ends` by port. */
export const vacuumReadings = (ends: Readonly<Record<string, string>>, tool: string): Reading[] =>
  Object.entries(ends).flatMap(([spot, end]): Reading[] => [
    { quantity: 'port-vacuum-start', spot, kind: 'port', typed: '25', unit: 'inHg', tool },
    { quantity: 'port-vacuum-end', spot, kind: 'port', typed: end, unit: 'inHg', tool },
  ]);

/** How many shims went under the springs. */
export const shimsOf = (...lists: (Shims | undefined)[]): number =>
  lists.flatMap((shims) => shims?.valves ?? []).reduce((sum, v) => sum + v.shims.length, 0);

export type Leaving = Readonly<{
  tag: number | readonly number[];
  ticket: number;
  customer: number;
  signer: string;
  signedAt: string;
  place: string;
  readyAt: string;
  takenAt: string;
  takenBy: string;
  person: number | null;
  /** How it is paid at the counter; on account when empty. */
  pays?: 'cash' | 'card' | 'cheque';
}>;

/** Sign off, put away, tell, invoice, pay, hand over. */
export async function handOver(story: Story, leaving: Leaving): Promise<void> {
  const tags = typeof leaving.tag === 'number' ? [leaving.tag] : leaving.tag;
  await signAndPutAway(story, leaving, tags);
  await invoiceAndRelease(story, leaving);
}

export async function signAndPutAway(
  { at, send, bench }: Story,
  leaving: Leaving,
  tags: readonly number[],
): Promise<void> {
  await at(leaving.signedAt);
  for (const tag of tags) {
    const { castingId } = await bench(tag);
    const open = await send('castings/get-sign-off', { castingId }, leaving.signer);
    await send('castings/sign-off-casting', { castingId, seenVersion: open.version, place: 'first' }, leaving.signer);
  }
  await at(leaving.readyAt);
  const { rows } = await send('racks/get-release', { ticketId: leaving.ticket as never }, 'TV');
  for (const row of rows) {
    const thing = row.containerId === null ? { castingId: row.castingId } : { containerId: row.containerId };
    await send('racks/put-away', { things: [thing as never], place: leaving.place }, 'SO');
  }
  const told = await send('racks/get-ready-label', { ticketId: leaving.ticket as never }, 'TV');
  await send(
    'tickets/log-contact',
    {
      ticketId: leaving.ticket,
      customerId: leaving.customer,
      personId: leaving.person,
      means: 'call',
      about: 'ready',
      words: `Ready: ${told.words}.`,
      reached: true,
    } as never,
    'TV',
  );
}

export async function invoiceAndRelease({ at, send }: Story, leaving: Leaving): Promise<void> {
  const ticketId = leaving.ticket as never;
  await at(leaving.takenAt);
  const preview = await send('invoices/get-preview', { ticketId }, 'TV');
  const invoice = await send('invoices/issue-invoice', { ticketId, seenTotal: preview.bill.figures.total }, 'TV');
  if (leaving.pays) {
    await send(
      'payments/take-payment',
      {
        customerId: leaving.customer as never,
        kind: leaving.pays,
        amount: invoice.balance,
        apply: [{ invoiceId: invoice.invoiceId, amount: invoice.balance }],
      },
      'TV',
    );
  }
  const { rows } = await send('racks/get-release', { ticketId }, 'TV');
  const going = rows.filter((row) => !row.out);
  await send(
    'racks/release-goods',
    {
      ticketId,
      castings: going.flatMap((row) => (row.containerId === null && row.castingId !== null ? [row.castingId] : [])),
      containers: going.flatMap((row) =>
        row.containerId === null ? [] : [{ containerId: row.containerId, counted: row.piecesIn }],
      ),
      items: going.flatMap((row) =>
        row.items
          .filter((item) => item.fate === null)
          .map((item) => ({
            itemId: item.itemId,
            count: item.countNow ?? item.expected ?? 0,
            fate: 'in_casting' as const,
          })),
      ),
      takenBy: leaving.takenBy,
      personId: leaving.person as never,
      proof: 'claim_ticket',
      signedOnPaper: true,
    },
    'TV',
  );
}
