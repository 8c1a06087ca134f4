import { describe, expect, it } from 'vitest';
import { writeDb } from '#core/db/query.ts';
import { moment } from '#core/kernel/days.ts';
import { openTicket } from '#tests/kit/open-ticket.ts';
import { startTestHost, TEST_NOW } from '#tests/kit/test-host.ts';

async function desk() {
  const shop = await startTestHost();
  const ticket = await openTicket(shop, {
    customer: 'Fisk-Tarrow',
    castings: [{ type: 'LO-4', material: 'iron_grey' }],
  });
  const { ticketId } = ticket;
  const castingId = ticket.castings[0]?.id as number;
  await shop.send('pricing/add-operations', {
    ticketId,
    castingId,
    operations: [{ operationKindId: ticket.kind('seat-cut') }],
  });
  const ask = () =>
    shop.send('approvals/ask-added-work', {
      ticketId,
      castingId,
      words: 'guides are worn',
      expiresAt: '2026-03-11T21:00:00.000Z',
      options: [{ kind: 'work', words: 'guide liners', operations: [{ operationKindId: ticket.kind('guide-liner') }] }],
    });
  const said = { personId: ticket.person('Annelore Fisk-Tarrow'), means: 'counter', words: 'yes' } as const;
  return { shop, ticket, ticketId, castingId, ask, said };
}

describe('approvals/list-unanswered', () => {
  it('lists estimates and added work, the soonest to end first, with the tries so far', async () => {
    const { shop, ticket, ticketId, ask } = await desk();
    await shop.send('pricing/send-estimate', { ticketId, validUntil: '2026-03-10' });
    await ask();
    shop.setClock('2026-03-10T14:00:00.000Z');
    await shop.send('tickets/log-contact', {
      customerId: ticket.customerId,
      ticketId,
      means: 'call',
      about: 'answer',
      words: 'nobody there',
      reached: false,
    });
    const { rows } = await shop.send('approvals/list-unanswered', {});
    expect(rows.map((r) => [r.kind, r.number, r.expiresWords, r.expired, r.tries])).toEqual([
      ['estimate', `${ticket.number}-E1`, 'Tue 10 Mar', false, 1],
      ['added_work', `${ticket.number}-A1`, 'Wed 11 Mar 17:00', false, 1],
    ]);
    shop.setClock('2026-03-12T14:00:00.000Z');
    expect((await shop.send('approvals/list-unanswered', { ticketId })).rows.map((r) => r.expired)).toEqual([
      true,
      true,
    ]);
  });

  it('is empty when all is answered', async () => {
    const { shop, ticketId, said } = await desk();
    const { estimateId } = await shop.send('pricing/send-estimate', { ticketId });
    await shop.send('approvals/record-answer', { question: { estimateId }, answer: 'yes', ...said });
    expect(await shop.send('approvals/list-unanswered', {})).toEqual({ rows: [] });
  });
});

describe('approvals/close-question', () => {
  it('ends a question nobody will answer, once', async () => {
    const { shop, ask } = await desk();
    const { addedWorkId, options } = await ask();
    await shop.send('approvals/close-question', { addedWorkId, seenVersion: 1 });
    expect(await shop.send('approvals/list-unanswered', {})).toEqual({ rows: [] });
    expect(await shop.refuse('approvals/close-question', { addedWorkId, seenVersion: 2 })).toMatchObject({
      code: 'approvals/closed',
    });
    const late = {
      question: { optionId: options[0]?.id as number },
      answer: 'yes',
      means: 'counter',
      words: 'yes',
      saidBy: 'x',
    } as const;
    expect(await shop.refuse('approvals/record-answer', late)).toMatchObject({ code: 'approvals/closed' });
  });
});

describe('approvals/get-question', () => {
  it('shows what the counter says on the telephone', async () => {
    const { shop, ticket, ask } = await desk();
    const { addedWorkId } = await ask();
    const question = await shop.send('approvals/get-question', { addedWorkId }, { as: 'TV' });
    expect(question).toMatchObject({
      number: `${ticket.number}-A1`,
      tag: ticket.castings[0]?.tag,
      words: 'guides are worn',
      askedBy: 'Odile Brackwen',
      expired: false,
      ceiling: false,
      totalBefore: 7488,
      anyoneMayApprove: false,
    });
    expect(question.options.map((o) => [o.letter, o.kind, o.extra, o.newTotal])).toEqual([
      // 8 liners at 13.00 and 4 % supplies
      ['a', 'work', 10_816, 18_304],
      ['b', 'stop_casting', 0, 0],
      ['c', 'stop_all', 0, 0],
    ]);
    expect(question.mayApprove).toMatchObject([{ name: 'Annelore Fisk-Tarrow', limit: null }]);
  });

  it('is not here for a number nobody gave', async () => {
    const { shop } = await desk();
    expect(await shop.refuse('approvals/get-question', { addedWorkId: 999 })).toMatchObject({ kind: 'not-found' });
  });
});

describe('the answer to scrap', () => {
  it('is asked only once a lead called it scrap, and stands on the casting', async () => {
    const { shop, ticketId, castingId, said } = await desk();
    const answer = { question: { scrapCastingId: castingId }, answer: 'yes', ...said } as const;
    expect(await shop.refuse('approvals/record-answer', answer)).toMatchObject({ code: 'approvals/not-scrap' });
    const db = writeDb(shop.host.sqlite, { now: moment(TEST_NOW), by: null });
    db.set('casting', castingId, { scrap_at: moment(TEST_NOW), scrap_why: 'cracked through' });
    shop.host.project(db, [ticketId as never]);
    const { approvalId } = await shop.send('approvals/record-answer', answer);
    expect(shop.db.sql('SELECT scrap_approval_id AS id FROM casting')).toEqual([{ id: approvalId }]);
  });
});
