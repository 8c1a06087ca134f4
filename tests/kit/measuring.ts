/** A checked-in head on a test host, and what its tests keep asking. */
import type { CastingId, SpotId, TicketId } from '#core/kernel/ids.ts';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

export type Measuring = TestHost &
  Readonly<{
    casting: CastingId;
    ticket: TicketId;
    /** The table as the screen gets it. */
    table(code?: string): Promise<Sheet>;
    spot(label: string): Promise<SpotId>;
    /** Keep one height before, as the machinist DK. */
    height(label: string, typed: string, more?: Readonly<Record<string, unknown>>): ReturnType<TestHost['send']>;
  }>;

/** One head of the type, metal confirmed, ready to be measured. */
export async function startMeasuring(
  type = 'LO-4',
  ticketFields: Readonly<Record<string, unknown>> = {},
): Promise<Measuring> {
  const host = await startTestHost();
  const made = await host.send(
    'tickets/check-in-ticket',
    {
      customer: { add: { name: 'Ossian Wherrytun' } },
      ticket: ticketFields,
      castings: [
        { type, material: type === 'CF-4' ? 'aluminium' : 'iron_grey', materialHow: 'magnet', position: 'single' },
      ],
      signed: { how: 'on_paper', by: 'Ossian Wherrytun' },
    } as never,
    { as: 'TV' },
  );
  const casting = made.castings[0]?.castingId as CastingId;
  const table = (code = 'heights') => host.send('readings/get-table', { casting, table: code }, { as: 'DK' });
  const spot = async (label: string) => {
    const found = (await table()).columns.find((column) => column.label === label)?.spot;
    if (found == null) throw new Error(`no valve ${label}`);
    return found;
  };
  return {
    ...host,
    casting,
    ticket: made.ticketId as TicketId,
    table,
    spot,
    async height(label, typed, more = {}) {
      const row = { quantity: 'installed-height', spot: await spot(label), stage: 'before' as const, typed, ...more };
      return host.send('readings/add-readings', { casting, rows: [row] }, { as: 'DK' }) as never;
    },
  };
}
