import { describe, expect, it } from 'vitest';
import type { CastingId } from '#core/kernel/ids.ts';
import type { ClaimTicketPaper, EstimatePaper, TravellerPaper } from '#core/sheets/contract/papers.ts';
import { checkInPair } from '#tests/kit/checked-in.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

async function paperOf<T>(shop: TestHost, wish: object, as = 'TV'): Promise<T> {
  const { data } = await shop.send('sheets/get-paper', { wish: wish as never }, { as });
  return data as unknown as T;
}

describe('sheets/get-paper', () => {
  it('gathers a claim ticket: what was left, in which condition, what was asked for', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);

    const claim = await paperOf<ClaimTicketPaper>(shop, { paper: 'claim-ticket', ticketId: made.ticketId });

    expect(claim.leftBy).toEqual({ name: 'Mudlark Lane Garage Ltd', more: 'Ysolde Kerrow, 555-0115' });
    expect(claim.castings.map(({ tag, piece, short }) => ({ ...tag, piece, short }))).toEqual([
      { number: String(made.castings[0]?.tagNo), metal: 'aluminium', piece: '1 of 2', short: [] },
      { number: String(made.castings[1]?.tagNo), metal: 'aluminium', piece: '2 of 2', short: ['1 of 2 dowels'] },
    ]);
    expect(claim.castings[1]?.conditions.map(({ no }) => no)).toEqual(['1', '2']);
    expect(claim.promise).toEqual({ when: 'Thursday 12 March, 16:30', condition: 'if no cracks are found' });
    expect(claim.notes.find(({ label }) => label === 'Your own marks:')?.words).toContain('paint L = tag');
  });

  it('prints the money of the ticket page: lines and sums are the same cents', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);

    const claim = await paperOf<ClaimTicketPaper>(shop, { paper: 'claim-ticket', ticketId: made.ticketId });
    const sheet = await shop.send('pricing/get-sheet', { ticketId: made.ticketId }, { as: 'TV' });
    const cents = (amount: string) => Math.round(Number(amount.replace(/,/g, '').replace('−', '-')) * 100);

    expect(claim.asked.reduce((sum, { amount }) => sum + cents(amount), 0)).toBe(sheet.bill.figures.beforeTax);
    expect(cents(claim.totals.at(-1)?.amount ?? '')).toBe(sheet.bill.figures.total);
    expect(claim.asked.find(({ words }) => words.startsWith('Pressure test'))).toMatchObject({
      units: '2',
      price: '86.25',
      amount: '172.50',
    });
  });

  it('prints the legal name of a customer who has one', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop, 'Lower Ouvel Drainage Commissioners');

    const claim = await paperOf<ClaimTicketPaper>(shop, { paper: 'claim-ticket', ticketId: made.ticketId });

    expect(claim.leftBy.name).toHaveLength(160);
  });

  it('gathers a traveller without money or telephone, the last wash before assembly', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    const castingId = made.castings[1]?.castingId as CastingId;

    const paper = await paperOf<TravellerPaper>(shop, { paper: 'traveller', castingId }, 'JP');

    expect(paper).toMatchObject({ position: 'RIGHT', piece: 'head 2 of 2', customer: 'Mudlark Lane', rush: false });
    expect(paper.tag.metal).toBe('aluminium');
    expect(JSON.stringify({ ...paper, head: null })).not.toMatch(/555-|86\.25|415\.00/);
    expect(paper.operations.map(({ no }) => no)).toEqual(paper.operations.map((_, index) => String(index + 1)));
    expect(paper.grids.flatMap(({ groups }) => groups.flatMap(({ spots }) => spots))).toContain('6E2');
    expect(paper.warnings).toContain('MLS GASKET');
    expect(paper.spec.some(({ chosen, other }) => chosen.includes('mm') && other.includes('in'))).toBe(true);
  });

  it('marks work that is not approved on the traveller', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    const castingId = made.castings[0]?.castingId as CastingId;
    const ysolde =
      shop.db.sql<{ id: number }>("SELECT id FROM customer_person WHERE name = 'Ysolde Kerrow'")[0]?.id ?? 0;
    const said = { personId: ysolde, means: 'counter', words: 'one dollar and no more' } as const;
    await shop.send('approvals/set-ceiling', { ticketId: made.ticketId, amount: 100, ...said }, { as: 'TV' });

    const paper = await paperOf<TravellerPaper>(shop, { paper: 'traveller', castingId }, 'JP');

    expect(paper.operations.some(({ no, note }) => no.endsWith('?') && note.startsWith('ONLY IF APPROVED'))).toBe(true);
  });

  it('gathers an estimate as it was sent', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    const sent = await shop.send('pricing/send-estimate', { ticketId: made.ticketId }, { as: 'TV' });

    const paper = await paperOf<EstimatePaper>(shop, { paper: 'estimate', estimateId: sent.estimateId });

    expect(paper.number).toBe(`${made.number}-E1`);
    expect(paper.groups.map(({ tag }) => tag?.number)).toEqual(made.castings.map(({ tagNo }) => String(tagNo)));
    expect(paper.totals.at(-1)).toMatchObject({ strong: true });
  });

  it('gathers a drop-off sheet without a ticket', async () => {
    const shop = await startTestHost();

    const paper = await paperOf<{ number: string }>(shop, { paper: 'drop-off' });

    expect(paper.number).toBe('');
  });

  it.each([
    { paper: 'claim-ticket', ticketId: 9999 },
    { paper: 'traveller', castingId: 9999 },
    { paper: 'estimate', estimateId: 9999 },
    { paper: 'added-work', addedWorkId: 9999 },
    { paper: 'build-sheet', castingId: 9999 },
    { paper: 'invoice', invoiceId: 9999 },
    { paper: 'receipt', paymentId: 9999 },
    { paper: 'release', releaseId: 9999 },
  ])('refuses $paper of a thing that is not there', async (wish) => {
    const shop = await startTestHost();

    const error = await shop.refuse('sheets/get-paper', { wish: wish as never });

    expect(error.kind).toBe('not-found');
  });

  it('refuses a sheet of tags or labels with nothing on it', async () => {
    const shop = await startTestHost();
    const made = await checkInPair(shop);
    shop.sqlite
      .prepare('UPDATE casting SET out_at = ? WHERE ticket_id = ?')
      .run('2026-03-09T14:00:00.000Z', made.ticketId);
    shop.sqlite
      .prepare('UPDATE container SET out_at = ? WHERE ticket_id = ?')
      .run('2026-03-09T14:00:00.000Z', made.ticketId);

    const error = await shop.refuse('sheets/get-paper', { wish: { paper: 'ready-label', ticketId: made.ticketId } });

    expect(error).toMatchObject({ code: 'sheets/nothing-to-print', kind: 'rule-broken' });
  });
});
