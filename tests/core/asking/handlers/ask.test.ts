/**
 * Added work on two heads. Figures: regression baseline of the practice shop's ticket S02 (invented data); the sums were
 * checked by hand.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import { finishWork, type Opened, openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let shop: TestHost;
let ticket: Opened;
let ticketId: number;
let left: number;
let right: number;
const ENDS = '2026-03-13T21:00:00.000Z';

const answerOf = (name: string) =>
  ({
    personId: ticket.person(name),
    means: 'phone',
    numberCalled: '555-0115',
    words: 'go ahead with the weld',
  }) as const;

const operations = (...codes: string[]) => codes.map((code) => ({ operationKindId: ticket.kind(code) }));
const weld = () => ({
  kind: 'work' as const,
  words: 'weld, new seat, dye and pressure re-test, cam line again',
  daysMore: 3,
  operations: [
    { operationKindId: ticket.kind('weld-repair'), quantity: 5400 },
    { operationKindId: ticket.kind('seat-insert'), quantity: 1 },
    ...operations('penetrant-check', 'pressure-retest', 'cam-bore-check'),
  ],
  parts: [{ stockItemId: ticket.stock('insert-ex'), quantity: 1 }],
});
const ask = () => ({
  ticketId,
  castingId: right,
  words: 'Crack from exhaust seat 3E2 into water.',
  options: [weld(), { kind: 'other_casting' as const, words: 'customer finds another casting' }],
});

beforeEach(async () => {
  shop = await startTestHost();
  const head = { type: 'BV-6', material: 'aluminium' };
  ticket = await openTicket(shop, { customer: 'Mudlark Lane', castings: [head, head], orderNumber: 'ML-7731' });
  ticketId = ticket.ticketId;
  left = ticket.castings[0]?.id as number;
  right = ticket.castings[1]?.id as number;
  for (const castingId of [left, right]) {
    await shop.send('pricing/add-package-line', {
      ticketId,
      packageId: ticket.pack('valve-job'),
      castings: [castingId],
    });
    await shop.send('pricing/add-operations', {
      ticketId,
      castingId,
      operations: operations('penetrant-check', 'pressure-test', 'cam-bore-check', 'surface-head'),
    });
    await shop.send('parts/add-part', {
      ticketId,
      castingId,
      part: { stockItemId: ticket.stock('seal-mm'), quantity: 12 },
    });
  }
  await shop.send('approvals/set-ceiling', { ticketId, amount: 150_000, taxIn: false, ...answerOf('Piet Vandrell') });
  finishWork(shop, right, 'disassemble-head', 'aluminium-wash', 'penetrant-check', 'pressure-test');
});

describe('approvals/get-added-work-price', () => {
  it('prices the ways and both stops without asking', async () => {
    const { options, stopCasting, stopAll } = await shop.send('approvals/get-added-work-price', ask());
    expect(options.map((o) => [o.letter, o.kind, o.extra, o.newTotal])).toEqual([
      ['a', 'work', 32_672, 159_907],
      ['b', 'other_casting', 0, 127_235],
      ['c', 'stop_casting', 0, 87_438],
      ['d', 'stop_all', 0, stopAll.bill.figures.beforeTax],
    ]);
    expect(options[0]).toMatchObject({ extraWithTax: 32_752, pastCeiling: 9907, daysMore: 3 });
    expect(options[0]?.lines.map((l) => l.working)).toEqual([
      '1.5 h × 110.00',
      '1 seat × 28.00',
      '40.00 × 1.15',
      '75.00 × 1.15',
      '25.00',
      '11.50',
    ]);
    // 56.00 + 51.75 of the package at list price, dye 46.00, pressure test 86.25
    const rightLines = stopCasting.lines.filter((l) => l.tag === ticket.castings[1]?.tag);
    expect(rightLines.map((l) => [l.amount, l.working])).toEqual([
      [10_775, 'done so far, at list price'],
      [4600, '40.00 × 1.15'],
      [8625, '75.00 × 1.15'],
    ]);
    expect(stopAll.bill.figures).toMatchObject({ labour: 24_000, parts: 0, fee: 650 });
    expect(shop.db.sql('SELECT id FROM added_work')).toEqual([]);
  });

  it('refuses a way that does not fit the casting', async () => {
    const wrong = { ...ask(), options: [{ ...weld(), operations: operations('mag-particle-check') }] };
    expect(await shop.refuse('approvals/get-added-work-price', wrong)).toMatchObject({ code: 'pricing/does-not-fit' });
    const hours = { ...ask(), options: [{ ...weld(), operations: operations('weld-repair') }] };
    expect(await shop.refuse('approvals/get-added-work-price', hours)).toMatchObject({ code: 'pricing/count-missing' });
  });
});

describe('approvals/ask-added-work', () => {
  it('numbers the question, holds the casting, and leaves the bill as it was', async () => {
    const before = await shop.send('pricing/get-sheet', { ticketId });
    const asked = await shop.send(
      'approvals/ask-added-work',
      { ...ask(), expiresAt: ENDS, ifNoAnswer: 'work on both heads waits' },
      { as: 'TV' },
    );
    expect(asked.number).toBe(`${ticket.number}-A1`);
    const after = await shop.send('pricing/get-sheet', { ticketId });
    expect(after.bill).toEqual(before.bill);
    expect(after.lines.filter((l) => l.option === 'A1 a').map((l) => l.covered)).toEqual([
      false,
      false,
      false,
      false,
      false,
      false,
    ]);
    expect(shop.db.sql('SELECT reason, casting_id FROM hold WHERE closed_at IS NULL')).toEqual([
      { reason: 'customer_answer', casting_id: right },
    ]);
    const { rows } = await shop.send('approvals/list-unanswered', {});
    expect(rows).toMatchObject([
      {
        kind: 'added_work',
        number: `${ticket.number}-A1`,
        amount: 32_672,
        expired: false,
        expiresWords: 'Fri 13 Mar 17:00',
      },
    ]);
  });

  it('refuses an end that is over', async () => {
    const late = { ...ask(), expiresAt: '2026-03-09T13:00:00.000Z' };
    expect(await shop.refuse('approvals/ask-added-work', late)).toMatchObject({ code: 'approvals/over-already' });
  });
});

describe('the answer to added work', () => {
  const asked = async () => {
    const { addedWorkId, options } = await shop.send('approvals/ask-added-work', { ...ask(), expiresAt: ENDS });
    const option = (letter: string) => options.find((o) => o.letter === letter)?.id as number;
    const say = (letter: string, answer: 'yes' | 'no', name = 'Ysolde Kerrow') =>
      shop.send('approvals/record-answer', { question: { optionId: option(letter) }, answer, ...answerOf(name) });
    return { addedWorkId, option, say };
  };

  it('yes to the weld, within her limit: authorised 1826.72, work goes on', async () => {
    const { addedWorkId, say } = await asked();
    expect(await say('a', 'yes')).toMatchObject({ authorised: 182_672, authorisedTaxIn: false });
    const sheet = await shop.send('pricing/get-sheet', { ticketId });
    expect(sheet.bill.figures.beforeTax).toBe(159_907);
    expect(sheet.authorised.words).toBe('Ceiling 1500.00 before tax, and A1 a 326.72');
    expect(sheet.lines.filter((l) => l.option === 'A1 a').every((l) => l.covered)).toBe(true);
    expect(shop.db.sql('SELECT id FROM hold WHERE closed_at IS NULL')).toEqual([]);
    const question = await shop.send('approvals/get-question', { addedWorkId });
    expect(question.options.map((o) => o.answer)).toEqual(['yes', null, null, null]);
    expect(question).toMatchObject({ totalBefore: 127_235, closedAt: '2026-03-09T14:00:00.000Z' });
    expect(question.answers).toMatchObject([
      { saidBy: 'Ysolde Kerrow', means: 'phone', words: 'go ahead with the weld', amount: 32_672 },
    ]);
    expect(question.mayApprove.map((p) => [p.name, p.limit])).toEqual([
      ['Ysolde Kerrow', 60_000],
      ['Piet Vandrell', null],
    ]);
    expect(await shop.send('approvals/list-unanswered', {})).toEqual({ rows: [] });
  });

  it('stops this head and finishes the other: to pay 874.38', async () => {
    const { say } = await asked();
    await say('c', 'yes');
    const sheet = await shop.send('pricing/get-sheet', { ticketId });
    expect(sheet.bill.figures.beforeTax).toBe(87_438);
    const live = shop.db.sql<{ n: number }>(
      'SELECT COUNT(*) AS n FROM operation WHERE casting_id = ? AND finished_at IS NULL AND not_needed_at IS NULL',
      right,
    );
    expect(live).toEqual([{ n: 0 }]);
    // The package became its two done operations, at list price.
    const kept = sheet.lines.filter((l) => l.castingId === right && !l.withdrawn && l.option === null);
    expect(kept.map((l) => [l.shopWords, l.amount])).toEqual(
      expect.arrayContaining([
        ['Strip head', 5600],
        ['Alu wash', 5175],
      ]),
    );
    expect(sheet.lines.filter((l) => l.castingId === left).every((l) => l.withdrawn === null)).toBe(true);
  });

  it('stops everything: only what is done stays', async () => {
    const { say } = await asked();
    await say('d', 'yes');
    const { bill } = await shop.send('pricing/get-sheet', { ticketId });
    // 240.00 less 10 %, supplies 4 %, one wash
    expect(bill.figures).toMatchObject({
      labour: 24_000,
      labourDiscount: -2400,
      supplies: 960,
      fee: 650,
      parts: 0,
      beforeTax: 23_210,
    });
  });

  it('a stop that was carried out is not taken back by words', async () => {
    const { say } = await asked();
    const { approvalId } = await say('c', 'yes');
    expect(await shop.refuse('approvals/withdraw-answer', { approvalId, ...answerOf('Piet Vandrell') })).toMatchObject({
      code: 'approvals/stop-carried-out',
    });
  });

  it('a yes taken back opens the question again', async () => {
    const { addedWorkId, say } = await asked();
    const { approvalId } = await say('a', 'yes');
    expect(await shop.send('approvals/withdraw-answer', { approvalId, ...answerOf('Piet Vandrell') })).toMatchObject({
      authorised: 150_000,
    });
    expect(await shop.send('approvals/get-question', { addedWorkId })).toMatchObject({ closedAt: null });
    await say('a', 'yes');
  });

  it('a no to everything closes the question and charges none of it', async () => {
    const { addedWorkId } = await asked();
    await shop.send('approvals/record-answer', {
      question: { addedWorkId },
      answer: 'no',
      ...answerOf('Ysolde Kerrow'),
    });
    const sheet = await shop.send('pricing/get-sheet', { ticketId });
    expect(sheet.bill.figures.beforeTax).toBe(127_235);
    expect(sheet.lines.filter((l) => l.option !== null).map((l) => l.answer)).toEqual([
      'no',
      'no',
      'no',
      'no',
      'no',
      'no',
    ]);
    expect(await shop.send('approvals/list-unanswered', {})).toEqual({ rows: [] });
  });

  it('a yes above her limit needs somebody else', async () => {
    const big = { ...weld(), operations: [{ operationKindId: ticket.kind('weld-repair'), quantity: 6 * 3600 + 3600 }] };
    const { options } = await shop.send('approvals/ask-added-work', { ...ask(), options: [big], expiresAt: ENDS });
    const question = { optionId: options[0]?.id as number };
    expect(
      await shop.refuse('approvals/record-answer', { question, answer: 'yes', ...answerOf('Ysolde Kerrow') }),
    ).toMatchObject({
      code: 'approvals/may-not-approve',
    });
    await shop.send('approvals/record-answer', { question, answer: 'yes', ...answerOf('Piet Vandrell') });
  });
});
