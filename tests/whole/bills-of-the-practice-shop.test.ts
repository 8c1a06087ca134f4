/**
 * Six tickets of the practice shop, driven through commands from check-in to the invoice, against its expected figures.
 * A regression baseline of invented data (tests/reference/practice-bills.json), not an outside proof.
 */
import { describe, expect, it } from 'vitest';
import { finishWork } from '#tests/kit/open-ticket.ts';
import {
  addPart,
  checkIn,
  customerId,
  expected,
  issue,
  kindId,
  personId,
  stockItemId,
} from '#tests/kit/practice-bills.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

describe('S01, done in a day', () => {
  it('estimates 375.94 and bills 381.71', async () => {
    const shop = await startTestHost();
    const { ticketId, castings } = await checkIn(shop, '2027-03-02T12:40:00.000Z', {
      customer: { customerId: customerId(shop, 'Fisk-Tarrow') },
      castings: [{ type: 'LO-4', material: 'iron_grey', position: 'single', tagNo: 41_170 }],
      wishes: [{ package: 'valve-job' }, { operation: 'mag-particle-check' }],
    });
    const castingId = castings[0]?.castingId as number;
    await addPart(shop, ticketId, 'seal-in', 8, castingId);
    const { estimateId } = await shop.send('pricing/send-estimate', { ticketId }, { as: 'TV' });
    const estimate = await shop.send('pricing/get-sheet', { ticketId });
    expect(estimate.bill.figures).toMatchObject(expected('S01 estimate'));
    const yes = {
      question: { estimateId },
      answer: 'yes',
      personId: personId(shop, 'Annelore Fisk-Tarrow'),
      means: 'counter',
      words: 'go ahead',
    } as const;
    await shop.send('approvals/record-answer', yes, { as: 'TV' });
    finishWork(shop, castingId);
    await addPart(shop, ticketId, 'shim-in', 6, castingId);
    expect(await issue(shop, ticketId)).toMatchObject(expected('S01 invoice'));
  });
});

describe('S02, to the telephone answer and its bill', () => {
  it('authorises 1826.72 and bills 1622.67', async () => {
    const shop = await startTestHost();
    const head = { type: 'BV-6', material: 'aluminium', pair: 1 } as const;
    const { ticketId, number, castings } = await checkIn(shop, '2027-03-09T13:10:00.000Z', {
      customer: { customerId: customerId(shop, 'Mudlark Lane') },
      ticket: { orderNumber: 'ML-7731' },
      castings: [
        { ...head, position: 'left', tagNo: 41_234 },
        { ...head, position: 'right', tagNo: 41_235 },
      ],
      wishes: [
        { package: 'valve-job' },
        ...['penetrant-check', 'pressure-test', 'cam-bore-check', 'surface-head'].map((operation) => ({ operation })),
      ],
      ceiling: {
        amount: 150_000,
        taxIn: false,
        personId: personId(shop, 'Piet Vandrell'),
        saidBy: 'Piet Vandrell',
        words: 'up to fifteen hundred',
      },
    });
    const right = castings.find((c) => c.tagNo === 41_235)?.castingId as number;
    for (const casting of castings) await addPart(shop, ticketId, 'seal-mm', 12, casting.castingId);
    const before = await shop.send('pricing/get-sheet', { ticketId });
    expect(before.bill.figures).toMatchObject(expected('S02 estimate'));
    expect(before.authorised).toMatchObject({ amount: 150_000, words: 'Ceiling 1500.00 before tax' });

    shop.setClock('2027-03-10T15:40:00.000Z');
    finishWork(shop, right, 'disassemble-head', 'aluminium-wash', 'penetrant-check', 'pressure-test');
    const asked = await shop.send(
      'approvals/ask-added-work',
      {
        ticketId,
        castingId: right,
        words: 'crack from exhaust seat 3E2 into water',
        expiresAt: '2027-03-12T22:00:00.000Z',
        options: [
          {
            kind: 'work',
            words: 'weld, new seat, dye and pressure re-test, cam line again',
            daysMore: 3,
            operations: [
              { operationKindId: kindId(shop, 'weld-repair'), quantity: 5400 },
              { operationKindId: kindId(shop, 'seat-insert'), quantity: 1 },
              ...['penetrant-check', 'pressure-retest', 'cam-bore-check'].map((code) => ({
                operationKindId: kindId(shop, code),
              })),
            ],
            parts: [{ stockItemId: stockItemId(shop, 'insert-ex'), quantity: 1 }],
          },
          { kind: 'other_casting', words: 'customer finds another casting' },
        ],
      },
      { as: 'TV' },
    );
    expect(asked.number).toBe(`${number}-A1`);
    expect(asked.options.map((o) => [o.kind, o.extra, o.newTotal]).slice(0, 3)).toEqual([
      ['work', 32_672, 159_907],
      ['other_casting', 0, 127_235],
      ['stop_casting', 0, 87_438],
    ]);
    shop.setClock('2027-03-10T16:20:00.000Z');
    const yes = {
      question: { optionId: asked.options[0]?.id as number },
      answer: 'yes',
      personId: personId(shop, 'Ysolde Kerrow'),
      means: 'phone',
      numberCalled: '555-0115',
      words: 'go ahead with the weld',
    } as const;
    expect(await shop.send('approvals/record-answer', yes, { as: 'TV' })).toMatchObject({ authorised: 182_672 });
    expect((await shop.send('pricing/get-sheet', { ticketId })).bill.figures.beforeTax).toBe(159_907);

    for (const casting of castings) finishWork(shop, casting.castingId);
    await addPart(shop, ticketId, 'shim-mm', 12, castings[0]?.castingId ?? null);
    await addPart(shop, ticketId, 'shim-mm', 11, right);
    shop.setClock('2027-03-16T15:00:00.000Z');
    expect(await issue(shop, ticketId)).toMatchObject(expected('S02 invoice'));
  });
});

describe('S04, wrong metal caught', () => {
  it('refuses caustic and the magnet, and bills 788.31', async () => {
    const shop = await startTestHost();
    const operations = [
      'disassemble-head',
      'aluminium-wash',
      'penetrant-check',
      'pressure-test',
      'guide-check',
      'seat-cut',
      'valve-grind',
      'spring-test',
      'cam-bore-check',
      'surface-head',
      'installed-height',
      'assemble-head',
      'vacuum-test',
      'final-clean',
    ];
    const { ticketId, castings } = await checkIn(shop, '2027-03-16T19:20:00.000Z', {
      customer: { customerId: customerId(shop, 'Racing Club') },
      castings: [
        {
          type: 'CF-4',
          material: 'aluminium',
          position: 'single',
          tagNo: 41_304,
          stampAllowed: 'tag_only',
          closeTolerance: true,
        },
      ],
      wishes: operations.map((operation) => ({ operation })),
    });
    const castingId = castings[0]?.castingId as number;
    for (const code of ['hot-tank', 'mag-particle-check']) {
      const wish = { ticketId, castingId, operations: [{ operationKindId: kindId(shop, code) }] };
      expect(await shop.refuse('pricing/add-operations', wish, { as: 'TV' }), code).toMatchObject({
        code: 'pricing/does-not-fit',
      });
    }
    await addPart(shop, ticketId, 'seal-mm', 8, castingId);
    await addPart(shop, ticketId, 'shim-mm', 7, castingId);
    finishWork(shop, castingId);
    shop.setClock('2027-03-22T15:00:00.000Z');
    const sheet = await shop.send('pricing/get-sheet', { ticketId });
    expect(sheet.lines.find((line) => line.operationKindId === kindId(shop, 'surface-head'))).toMatchObject({
      amount: 12_075,
      priceWords: '70.00 × 1.15 × 1.50',
    });
    expect(await issue(shop, ticketId)).toMatchObject(expected('S04 invoice'));
  });
});

describe('S08, the head goes first', () => {
  it('bills 958.83 and 2026.60: before tax the two are the one', async () => {
    const shop = await startTestHost();
    const { ticketId, castings } = await checkIn(shop, '2027-03-30T14:15:00.000Z', {
      customer: { customerId: customerId(shop, 'Sluice Gate') },
      castings: [
        { type: 'HB-24', material: 'iron_grey' },
        { type: 'HB-6B', material: 'iron_grey' },
        { type: 'HB-6C', material: 'steel' },
      ],
      wishes: [
        { package: 'diesel-head', castings: [0] },
        { package: 'rebore', castings: [1] },
        ...['main-line-check', 'deck-block', 'cam-bearing-fit'].map((operation) => ({ operation, castings: [1] })),
        ...['crank-check', 'crank-polish'].map((operation) => ({ operation, castings: [2] })),
      ],
    });
    const [head, block, crank] = castings.map((casting) => casting.castingId);
    await addPart(shop, ticketId, 'seal-mm', 24, head);
    await addPart(shop, ticketId, 'piston-hb6', 6, block);
    await addPart(shop, ticketId, 'cambrg-hb6', 1, block);
    const sublet = { kind: 'sublet', words: 'grind the crankshaft 0.25 mm under', price: 3_720_000 } as const;
    await shop.send('pricing/add-charge', { ticketId, castingId: crank ?? null, charge: sublet }, { as: 'MN' });

    finishWork(shop, head as number);
    shop.setClock('2027-04-08T15:00:00.000Z');
    const which = { ticketId, castings: [head as number] };
    const { bill, stays } = await shop.send('invoices/get-preview', which);
    expect(bill.figures).toMatchObject(expected('S08 first invoice'));
    expect(stays.length).toBeGreaterThan(0);
    await shop.send('invoices/issue-invoice', { ...which, seenTotal: bill.figures.total });

    for (const casting of [block, crank]) finishWork(shop, casting as number);
    shop.setClock('2027-04-20T15:00:00.000Z');
    const second = await issue(shop, ticketId);
    expect(second).toMatchObject(expected('S08 second invoice'));
    expect(bill.figures.beforeTax + second.beforeTax).toBe(expected('S08 as one invoice').beforeTax);
  });
});

describe('S10, an exchange head and its core', () => {
  it('adds up to the smallest labour charge and leaves the core untaxed: 765.54, then 90.00 back', async () => {
    const shop = await startTestHost();
    const { ticketId, castings } = await checkIn(shop, '2027-04-12T15:00:00.000Z', {
      customer: { customerId: customerId(shop, 'Dairy Rounds') },
      castings: [{ type: 'TW-4', material: 'aluminium', shopOwned: true }],
      wishes: [{ operation: 'final-clean' }],
    });
    await addPart(shop, ticketId, 'head-tw4-exch', 1);
    await addPart(shop, ticketId, 'gasket-tw4', 1);
    const charge = { kind: 'core', words: 'core TW-4 head', price: 1_500_000 } as const;
    await shop.send('pricing/add-charge', { ticketId, charge });
    finishWork(shop, castings[0]?.castingId as number);
    expect(await issue(shop, ticketId)).toMatchObject(expected('S10 invoice'));
    const { rows } = await shop.send('invoices/list-invoices', { ticketId });
    const { lines } = await shop.send('invoices/get-invoice', { invoiceId: rows[0]?.id as number });
    const core = lines.find((line) => line.role === 'core')?.id as number;
    const note = {
      invoiceId: rows[0]?.id as number,
      lines: [{ invoiceLineId: core, amount: 9000 }],
      reason: 'core' as const,
      words: 'came back repairable',
    };
    expect(await shop.send('invoices/credit-invoice', note)).toMatchObject({ total: 9000, tax: 0, balance: 67_554 });
  });
});

describe('S12, the rush was missed', () => {
  it('asks 621.15 with rush and bills 504.65 without', async () => {
    const shop = await startTestHost();
    const { ticketId, castings } = await checkIn(shop, '2027-04-20T12:05:00.000Z', {
      customer: { customerId: customerId(shop, 'Steady Light') },
      castings: [{ type: 'BG-2', material: 'iron_grey' }],
      wishes: [{ package: 'diesel-head' }, { operation: 'seat-insert', quantity: 2 }],
      rush: 2500,
    });
    const casting = castings[0]?.castingId as number;
    await addPart(shop, ticketId, 'seal-mm', 4, casting);
    await addPart(shop, ticketId, 'insert-ex', 2, casting);
    await addPart(shop, ticketId, 'shim-mm', 5, casting);
    const sheet = await shop.send('pricing/get-sheet', { ticketId });
    expect(sheet.bill.figures).toMatchObject({ ...expected('S12 with rush'), rush: 11_650 });
    await shop.send('pricing/lose-rush', { ticketId, seenVersion: sheet.ticketVersion }, { as: 'TV' });
    finishWork(shop, casting);
    expect(await issue(shop, ticketId)).toMatchObject({ ...expected('S12 invoice'), rush: 0 });
  });
});
