/** A ticket checked in by the ordinary command, with everything a claim ticket shows: two heads, pieces, marks, work. */

import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import type { TestHost } from './test-host.ts';

export type CheckedIn = OutputOf<App['tickets/check-in-ticket']>;

const caps = { words: 'cam caps', expected: 8, counted: 8, boltedInPlace: true, numbersSeen: true };

const head = (position: 'left' | 'right', castingNumber: string) => ({
  type: 'BV-6',
  material: 'aluminium' as const,
  materialHow: 'magnet' as const,
  position,
  castingNumber,
  pair: 1,
  ownMarks: `paint ${position === 'left' ? 'L' : 'R'}`,
  items: [
    { words: 'valves', expected: 12, counted: 12, mixRule: 'keep_order' as const },
    { words: 'springs', expected: 12, counted: 12 },
    caps,
    { words: 'dowels', expected: 2, counted: position === 'left' ? 2 : 1 },
    { words: 'followers', expected: 12, counted: 12, container: 0, mixRule: 'own_place' as const },
  ],
  containers: [{ kind: 'tray' as const, contents: 'followers and adjusters', ownerMark: 'customers_own' as const }],
});

/** Check the pair of S02 in for a customer of the practice shop, by its name. */
export async function checkInPair(shop: TestHost, customer = 'Mudlark Lane Garage Ltd'): Promise<CheckedIn> {
  const found = shop.db.sql<{ id: number; person: number | null }>(
    `SELECT c.id, (SELECT p.id FROM customer_person p WHERE p.customer_id = c.id AND p.retired_on IS NULL ORDER BY p.id LIMIT 1) AS person
     FROM customer c WHERE c.name = ?`,
    customer,
  )[0];
  if (!found) throw new Error(`no customer ${customer}`);
  return shop.send(
    'tickets/check-in-ticket',
    {
      customer: { customerId: found.id, personId: found.person },
      ticket: {
        orderNumber: 'ML-7731',
        gasket: 'mls',
        historyWords: 'overheated while towing a boat',
        oldParts: 'discard',
        wantedWords: 'make them tight again',
      },
      castings: [
        { ...head('left', '4B?71-L'), marks: [] },
        {
          ...head('right', '4B871-R'),
          marks: [
            { condition: 'stripped-thread', x: 1500, y: 3000, severity: 2, words: 'plug hole 3' },
            { condition: 'water-port-pitting', x: 6400, y: 8000 },
          ],
        },
      ],
      wishes: [
        { package: 'valve-job', castings: [0] },
        { package: 'valve-job', castings: [1] },
        { operation: 'pressure-test' },
        { operation: 'surface-head' },
      ],
      ceiling: {
        amount: 150_000,
        taxIn: false,
        saidBy: 'Ysolde Kerrow',
        words: 'up to fifteen hundred',
        overrideWhy: 'her father agreed on the telephone',
      },
      promise: { day: '2026-03-12', minute: 990, dependsOn: 'if no cracks are found' },
      signed: { how: 'on_paper', by: 'Ysolde Kerrow' },
    },
    { as: 'OB' },
  );
}
