import { describe, expect, it } from 'vitest';
import { openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost } from '#tests/kit/test-host.ts';

/** A Mudlark Lane ticket: Ysolde Kerrow may approve up to 600.00, Piet Vandrell anything. */
async function desk() {
  const shop = await startTestHost();
  const ticket = await openTicket(shop, {
    customer: 'Mudlark Lane',
    castings: [{ type: 'BV-6', material: 'aluminium' }],
  });
  const { ticketId } = ticket;
  const castingId = ticket.castings[0]?.id as number;
  const operations = ['pressure-test', 'cam-bore-check'].map((code) => ({ operationKindId: ticket.kind(code) }));
  await shop.send('pricing/add-operations', { ticketId, castingId, operations });
  const ysolde = {
    personId: ticket.person('Ysolde Kerrow'),
    means: 'phone',
    numberCalled: '555-0115',
    words: 'go ahead',
  } as const;
  const piet = { personId: ticket.person('Piet Vandrell'), means: 'counter', words: 'yes' } as const;
  const sheet = () => shop.send('pricing/get-sheet', { ticketId });
  const estimate = async () => (await shop.send('pricing/send-estimate', { ticketId })).estimateId;
  return { shop, ticket, ticketId, castingId, ysolde, piet, sheet, estimate };
}

describe('approvals/set-ceiling', () => {
  it('authorises up to an amount, before tax or with it as was said', async () => {
    const { shop, ticketId, piet, sheet } = await desk();
    const answer = await shop.send(
      'approvals/set-ceiling',
      { ticketId, amount: 150_000, taxIn: false, ...piet },
      { as: 'TV' },
    );
    expect(answer).toMatchObject({ authorised: 150_000, authorisedTaxIn: false });
    expect((await sheet()).authorised).toMatchObject({
      ceiling: true,
      words: 'Ceiling 1500.00 before tax',
      left: 150_000,
      exposure: 0,
    });
    await shop.send('approvals/set-ceiling', { ticketId, amount: 90_000, ...piet });
    expect((await sheet()).authorised).toMatchObject({ amount: 90_000 });
  });

  it('refuses a person above their limit, unless a lead gives a reason (I7)', async () => {
    const { shop, ticketId, ysolde } = await desk();
    const ceiling = { ticketId, amount: 60_001, ...ysolde } as const;
    expect(await shop.refuse('approvals/set-ceiling', ceiling, { as: 'TV' })).toMatchObject({
      code: 'approvals/may-not-approve',
      message: 'Ysolde Kerrow may approve up to 600.00, this is 600.01. Pick a named person, or a lead gives a reason.',
    });
    const reasoned = { ...ceiling, overrideWhy: 'Piet is on leave' };
    expect(await shop.refuse('approvals/set-ceiling', reasoned, { as: 'TV' })).toMatchObject({ kind: 'not-allowed' });
    await shop.send('approvals/set-ceiling', reasoned, { as: 'BL' });
    const { answers } = await shop.send('approvals/list-answers', { ticketId });
    expect(answers[0]?.override).toEqual({ by: 'Bram Luttrick', why: 'Piet is on leave' });
    await shop.send('approvals/set-ceiling', { ...ceiling, amount: 60_000 }, { as: 'TV' });
  });
});

describe('approvals/record-answer', () => {
  it('asks who, how and which number (I6)', async () => {
    const { shop, ysolde, estimate } = await desk();
    const estimateId = await estimate();
    const base = { question: { estimateId }, answer: 'yes', ...ysolde } as const;
    const number = await shop.refuse('approvals/record-answer', { ...base, numberCalled: null });
    expect(number).toMatchObject({
      code: 'approvals/no-number',
      fields: { numberCalled: 'Write who said yes and the number you called.' },
    });
    expect(await shop.refuse('approvals/record-answer', { ...base, personId: null })).toMatchObject({
      code: 'approvals/no-name',
    });
    expect(await shop.refuse('approvals/record-answer', { ...base, words: ' ' })).toMatchObject({
      kind: 'invalid-input',
    });
    // The file refuses it too, whatever a program writes.
    const insert = shop.sqlite.prepare(
      `INSERT INTO approval (ticket_id, about, answer, amount_cents, said_by, means, words, said_at, created_at)
       VALUES (1, 'ceiling', 'yes', 1, 'x', 'phone', 'x', '2026-03-09T14:00:00.000Z', '2026-03-09T14:00:00.000Z')`,
    );
    expect(() => insert.run()).toThrow(/CHECK/);
  });

  it('covers every line of the estimate and authorises its sum', async () => {
    const { shop, ysolde, estimate, sheet } = await desk();
    const question = { estimateId: await estimate() };
    const before = await sheet();
    expect(before.lines.map((l) => [l.covered, l.coverWords.slice(0, 16)])).toEqual([
      [false, 'Not approved yet'],
      [false, 'Not approved yet'],
    ]);
    // 86.25 + 25.00, less 10 %, supplies 4 %
    expect(await shop.send('approvals/record-answer', { question, answer: 'yes', ...ysolde })).toMatchObject({
      authorised: 10_457,
    });
    const after = await sheet();
    expect(after.lines.every((l) => l.covered && l.answer === 'yes')).toBe(true);
    expect(after.estimates[0]?.answer).toBe('yes');
    expect(after.authorised.words).toBe('Estimate 104.57 before tax');
  });

  it('takes part of an estimate line by line', async () => {
    const { shop, ysolde, estimate, sheet } = await desk();
    const question = { estimateId: await estimate() };
    const [first, second] = (await sheet()).lines;
    const part = { question, answer: 'part', ...ysolde } as const;
    expect(await shop.refuse('approvals/record-answer', part)).toMatchObject({ code: 'approvals/part-of-what' });
    await shop.send('approvals/record-answer', { ...part, lines: [first?.id as number] });
    const { lines, bill, authorised } = await sheet();
    expect(lines.map((l) => l.answer)).toEqual(['yes', 'no']);
    // 86.25 less 8.63, supplies 3.45
    expect(authorised.amount).toBe(8107);
    expect(bill.figures.labour).toBe(first?.amount);
    expect(second?.coverWords).toContain('not been asked');
  });

  it('lets anybody say no, and only a named person say yes (I7)', async () => {
    const { shop, estimate } = await desk();
    const question = { estimateId: await estimate() };
    const sam = { saidBy: 'Sam', means: 'counter', words: 'we think so' } as const;
    const refused = await shop.refuse('approvals/record-answer', { question, answer: 'yes', ...sam }, { as: 'TV' });
    expect(refused).toMatchObject({
      code: 'approvals/may-not-approve',
      message: 'Sam may not approve for this customer. Pick a named person, or a lead gives a reason.',
    });
    const unnamed = { question, answer: 'yes', ...sam, why: 'his brother, known to us' } as const;
    expect(await shop.refuse('approvals/accept-unnamed', unnamed, { as: 'TV' })).toMatchObject({ kind: 'not-allowed' });
    await shop.send('approvals/accept-unnamed', unnamed, { as: 'DK' });
    await shop.send('approvals/record-answer', { question, answer: 'no', ...sam }, { as: 'TV' });
  });

  it('takes a person of another customer for nobody', async () => {
    const { shop, ticket, estimate } = await desk();
    const question = { estimateId: await estimate() };
    const stranger = { personId: ticket.person('Gil Vennacher'), means: 'counter', words: 'yes' } as const;
    expect(await shop.refuse('approvals/record-answer', { question, answer: 'yes', ...stranger })).toMatchObject({
      code: 'approvals/may-not-approve',
    });
  });

  it('answers the latest estimate only', async () => {
    const { shop, ysolde, estimate } = await desk();
    const first = await estimate();
    await estimate();
    expect(
      await shop.refuse('approvals/record-answer', { question: { estimateId: first }, answer: 'yes', ...ysolde }),
    ).toMatchObject({
      code: 'approvals/estimate-replaced',
    });
  });

  it('takes a yes to more hours, and none where none are over', async () => {
    const { shop, ticket, ticketId, castingId, piet, sheet } = await desk();
    const operations = [{ operationKindId: ticket.kind('weld-repair'), quantity: 3600 }];
    const { lines } = await shop.send('pricing/add-operations', { ticketId, castingId, operations });
    const overrunLineId = lines[0]?.lineId as number;
    const answer = { question: { overrunLineId }, answer: 'yes', ...piet } as const;
    expect(await shop.refuse('approvals/record-answer', answer)).toMatchObject({ code: 'approvals/no-overrun' });
    await shop.send('pricing/set-hours', { lineId: overrunLineId, seenVersion: 1, actual: 5400 });
    await shop.send('approvals/record-answer', answer);
    expect((await sheet()).lines.find((l) => l.id === overrunLineId)).toMatchObject({ answer: 'yes', covered: true });
  });
});

describe('approvals/withdraw-answer', () => {
  it('lets the earlier answer stand again, and only once', async () => {
    const { shop, ticketId, piet, sheet } = await desk();
    await shop.send('approvals/set-ceiling', { ticketId, amount: 50_000, ...piet });
    const { approvalId } = await shop.send('approvals/set-ceiling', { ticketId, amount: 90_000, ...piet });
    const back = await shop.send('approvals/withdraw-answer', { approvalId, ...piet });
    expect(back.authorised).toBe(50_000);
    expect((await sheet()).authorised.amount).toBe(50_000);
    expect(await shop.refuse('approvals/withdraw-answer', { approvalId, ...piet })).toMatchObject({
      code: 'approvals/taken-back',
    });
    const { answers } = await shop.send('approvals/list-answers', { ticketId });
    expect(answers.map((a) => [a.answer, a.withdrawn])).toEqual([
      ['withdrawn', false],
      ['yes', true],
      ['yes', false],
    ]);
  });

  it('keeps every row: the file refuses to change one', async () => {
    const { shop, ticketId, piet } = await desk();
    await shop.send('approvals/set-ceiling', { ticketId, amount: 50_000, ...piet });
    expect(() => shop.sqlite.prepare('UPDATE approval SET amount_cents = 1').run()).toThrow(/never changed/);
  });
});
