/** Whatever is sent, the desk answers with a sentence: never a bug, and nothing is written. */
import { beforeAll, describe, expect, it } from 'vitest';
import { castingsContract } from '#core/castings/contract.ts';
import { checkInContract } from '#core/check-in/contract.ts';
import { customersContract } from '#core/customers/contract.ts';
import { intakeContract } from '#core/intake/contract.ts';
import type { Contract } from '#core/kernel/contract.ts';
import { photosContract } from '#core/photos/contract.ts';
import { promisesContract } from '#core/promises/contract.ts';
import { racksContract } from '#core/racks/contract.ts';
import { releaseContract } from '#core/release/contract.ts';
import { searchContract } from '#core/search/contract.ts';
import { termsContract } from '#core/terms/contract.ts';
import { ticketPageContract } from '#core/ticket-page/contract.ts';
import { ticketsContract } from '#core/tickets/contract.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

const ALL: Contract = {
  ...customersContract,
  ...termsContract,
  ...ticketsContract,
  ...castingsContract,
  ...intakeContract,
  ...photosContract,
  ...racksContract,
  ...checkInContract,
  ...releaseContract,
  ...searchContract,
  ...ticketPageContract,
  ...promisesContract,
};
const NAMES = Object.keys(ALL);
/** Nobody has it. */
const GONE = 987_654;
const PICTURE = {
  base64: 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  mime: 'image/png',
};

/** Well-formed, and about things that are not here (any more). */
const ABOUT_NOTHING: Readonly<Record<string, unknown>> = {
  'customers/change-customer': { customerId: GONE, seenVersion: 1, changes: {} },
  'customers/add-person': { customerId: GONE, person: { name: 'x' } },
  'customers/change-person': { personId: GONE, seenVersion: 1, changes: {} },
  'customers/get-customer': { customerId: GONE },
  'customers/set-standing-instruction': { customerId: GONE, seenVersion: 1, words: 'x' },
  'customers/put-on-stop': { customerId: GONE, seenVersion: 1, why: 'x' },
  'customers/lift-stop': { customerId: GONE, seenVersion: 1, why: 'x' },
  'customers/set-terms': { customerId: GONE, seenVersion: 1 },
  'customers/add-exemption': { customerId: GONE, taxCode: 'x', certificateNo: '1', from: '2026-01-01' },
  'customers/end-exemption': { exemptionId: GONE, on: '2026-01-01' },
  'customers/get-account': { customerId: GONE },
  'tickets/open-enquiry': { customer: { customerId: GONE } },
  'tickets/change-ticket': { ticketId: GONE, seenVersion: 1, changes: {} },
  'tickets/decline-ticket': { ticketId: GONE, seenVersion: 1, why: 'x' },
  'tickets/log-contact': { ticketId: GONE, customerId: GONE, means: 'call', about: 'ready', words: 'x' },
  'promises/set-promise': { ticketId: GONE, promise: { day: '2026-03-12' }, reason: 'first' },
  'tickets/give-account-yes': { ticketId: GONE, about: 'work', why: 'x' },
  'castings/mark-condition': { castingId: GONE, mark: { condition: 'weld-before' } },
  'castings/remove-mark': { markId: GONE },
  'castings/get-casting': { castingId: GONE },
  'intake/get-arrival-list': { type: 'NO-SUCH' },
  'intake/add-item': { castingId: GONE, item: { words: 'x' } },
  'intake/add-container': { ticketId: GONE, container: { contents: 'x' } },
  'intake/seal-container': { containerId: GONE },
  'intake/count-pieces': { itemId: GONE, stage: 'out', count: 1 },
  'intake/set-fate': { fates: [{ itemId: GONE, fate: 'returned' }] },
  'photos/add-photo': { ticketId: GONE, file: PICTURE },
  'photos/hide-photo': { photoId: GONE, why: 'x' },
  'racks/put-away': { things: [{ castingId: GONE }], place: 'W2' },
  'racks/list-place': { place: 'NO-SUCH' },
  'racks/retire-place': { placeId: GONE, seenVersion: 1 },
  'tickets/check-in-ticket': { customer: { customerId: GONE }, castings: [{ type: 'LO-4', material: 'iron_grey' }] },
  'tickets/quick-ticket': { customer: { customerId: GONE }, words: 'x', price: 1 },
  'tickets/get-like': { ticketId: GONE },
  'castings/add-casting': { ticketId: GONE, castings: [{ type: 'LO-4', material: 'iron_grey' }] },
  'castings/change-casting': { castingId: GONE, seenVersion: 1, changes: {} },
  'castings/confirm-metal': { castingId: GONE, material: 'aluminium', how: 'magnet' },
  'castings/move-casting': { castingId: GONE, seenVersion: 1, toTicketId: GONE, why: 'x' },
  'intake/sign-claim': { ticketId: GONE, how: 'on_paper' },
  'racks/get-release': { ticketId: GONE },
  'racks/get-ready-label': { ticketId: GONE },
  'racks/release-goods': { ticketId: GONE, castings: [GONE], takenBy: 'x', proof: 'known', signedOnPaper: true },
  'racks/release-unpaid': {
    ticketId: GONE,
    castings: [GONE],
    takenBy: 'x',
    proof: 'known',
    signedOnPaper: true,
    reason: 'x',
  },
  'tickets/get-ticket': { ticketId: GONE },
  'promises/get-suggestion': { castings: [{ type: 'NO-SUCH' }] },
};

let t: TestHost;
beforeAll(async () => {
  t = await startTestHost();
});
const owner = () => ({ as: t.as('OB'), pin: '740101' });
const written = () => t.db.sql<{ n: number }>('SELECT COUNT(*) AS n FROM activity')[0]?.n;

describe('the desk', () => {
  it.each(NAMES)('%s answers shapeless input with a sentence', async (name) => {
    const before = written();
    const shapeless = [
      undefined,
      null,
      0,
      'x',
      [],
      [1],
      { unexpected: true },
      { customerId: -1 },
      { ticketId: 1.5 },
      { text: 5 },
      { castings: {} },
    ];
    for (const input of shapeless) {
      const reply = await t.ask(name, input, owner());
      expect(reply, `${name} ${JSON.stringify(input)}`).toMatchObject({ ok: false, error: { kind: 'invalid-input' } });
      if (!reply.ok) expect(Object.values(reply.error.fields ?? {}).every((words) => words.length > 4)).toBe(true);
    }
    expect(written()).toBe(before);
  });

  it.each(Object.keys(ABOUT_NOTHING))('%s says that a thing is not here', async (name) => {
    const before = written();
    const reply = await t.ask(name, ABOUT_NOTHING[name], owner());
    expect(reply.ok, name).toBe(false);
    if (reply.ok) return;
    expect(['not-found', 'invalid-input', 'rule-broken'], reply.error.message).toContain(reply.error.kind);
    expect(reply.error.message).toMatch(/[.?]$/);
    expect(written()).toBe(before);
  });

  it('covers every command and every query about one thing', () => {
    const others = [
      'customers/add-customer',
      'customers/find-customer',
      'customers/list-terms',
      'customers/add-terms',
      'photos/keep-proof',
      'photos/list-photos',
      'castings/find-by-tag',
      'castings/list-visits',
      'racks/list-places',
      'racks/add-place',
      'racks/get-pick-list',
      'search/find-anything',
      'tickets/list-open',
      'promises/list-due',
      'promises/list-late',
    ];
    expect(NAMES.filter((name) => !(name in ABOUT_NOTHING || others.includes(name)))).toEqual([]);
  });
});
