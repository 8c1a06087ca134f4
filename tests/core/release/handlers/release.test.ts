import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, customerNamed, IRON_HEAD, letGo } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
type Made = Awaited<ReturnType<typeof checkIn>>;
const input = (made: Made, changes: object = {}) => ({
  ticketId: made.ticketId,
  castings: made.castings.map((one) => one.castingId),
  containers: [...made.castings.flatMap((one) => one.containers), ...made.containers].map(({ containerId }) => ({
    containerId,
  })),
  takenBy: 'Wendolin Aubry',
  proof: 'claim_ticket' as const,
  signedOnPaper: true,
  unworkedWhy: 'not wanted after all',
  ...changes,
});
const go = (made: Made, changes: object = {}, as = 'TV') => t.ask('racks/release-goods', input(made, changes), { as });
const refusal = async (made: Made, changes: object = {}, as = 'TV') => {
  const reply = await go(made, changes, as);
  return reply.ok ? 'was let go' : reply.error;
};

describe('racks/release-goods', () => {
  it('hands back what nobody worked on, and the ticket reads collected', async () => {
    const made = await checkIn(t);
    expect(await go(made)).toMatchObject({ ok: true, output: { pieces: 1, words: 'All out: 1 piece.', staying: [] } });
    const page = await t.send('tickets/get-ticket', { ticketId: made.ticketId }, { as: 'TV' });
    expect(['collected', 'closed']).toContain(page.word);
    expect(page.castings[0]?.word).toBe('released');
    expect(page.releases[0]?.words).toBe('Wendolin Aubry took it Mon 9 Mar 10:00, claim ticket');
  });

  it('does not let an unsigned casting go without a reason', async () => {
    const made = await checkIn(t);
    expect(await refusal(made, { unworkedWhy: null })).toMatchObject({
      code: 'release/not-ready',
      fields: { 'castings.0': '40001 is not signed off. Sign it off, or write why it leaves unworked.' },
    });
  });

  it('lets nothing go while identity is in doubt (I22)', async () => {
    const first = await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K1' }] });
    await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K1' }] });
    expect(await refusal(first, {}, 'OB')).toMatchObject({
      message: '40001: which casting is this? Clear the identity question first.',
    });
    const unpaid = await t.refuse('racks/release-unpaid', { ...input(first), reason: 'hurry' }, { as: 'OB' });
    expect(unpaid.code).toBe('release/not-ready');
  });

  it('counts every piece out, or writes why not (I21)', async () => {
    const made = await checkIn(t, { castings: [{ ...IRON_HEAD, items: [{ words: 'caps', counted: 7 }] }] });
    const itemId = t.db.sql<{ id: number }>('SELECT id FROM arrival_item')[0]?.id ?? 0;
    const short = { itemId, count: 6, fate: 'returned' };
    expect(await refusal(made, { items: [short] })).toMatchObject({
      message: '7 caps came, 6 counted out. Explain before handing over.',
    });
    expect(await go(made, { items: [{ ...short, explained: 'one was cracked; the customer has it' }] })).toMatchObject({
      ok: true,
    });
    expect(t.db.sql('SELECT stage, count, explained FROM piece_count')).toEqual([
      { stage: 'out', count: 6, explained: 'one was cracked; the customer has it' },
    ]);
    expect(t.db.sql('SELECT fate, count FROM item_fate')).toEqual([{ fate: 'returned', count: 6 }]);
  });

  it('scans sealed bags: their lines end in the bag', async () => {
    const made = await checkIn(t, {
      castings: [
        {
          ...IRON_HEAD,
          items: [{ words: 'valves', counted: 8, container: 0 }],
          containers: [{ kind: 'tray', contents: 'valves', count: 8 }],
        },
      ],
    });
    const containerId = made.castings[0]?.containers[0]?.containerId ?? 0;
    expect(await refusal(made)).toMatchObject({
      fields: { 'containers.0': '40001-A: 8 came, none counted out. Count before handing over.' },
    });
    expect(await go(made, { containers: [{ containerId, counted: 8 }] })).toMatchObject({
      ok: true,
      output: { pieces: 2 },
    });
    expect(t.db.sql('SELECT fate, count FROM item_fate')).toEqual([{ fate: 'in_bag', count: 8 }]);
  });

  it('leaves no bag of a leaving casting behind without a word', async () => {
    const made = await checkIn(t, { castings: [{ ...IRON_HEAD, containers: [{ contents: 'caps' }] }] });
    const containerId = made.castings[0]?.containers[0]?.containerId ?? 0;
    expect(await refusal(made, { containers: [] })).toMatchObject({
      fields: { stays: '40001-A is still here: caps. Fetch it, or say why it stays.' },
    });
    expect(await go(made, { containers: [], stays: [{ containerId, why: 'cleaned tomorrow' }] })).toMatchObject({
      ok: true,
      output: {
        words: '1 of 2 pieces out; 40001-A stays.',
        staying: [{ label: '40001-A', words: 'cleaned tomorrow' }],
      },
    });
    const page = await t.send('tickets/get-ticket', { ticketId: made.ticketId }, { as: 'TV' });
    expect(page.chips.map((chip) => chip.chip)).toContain('partly out');
  });

  it('lets one casting of a pair go, and the ticket waits for the other', async () => {
    const made = await checkIn(t, { castings: [IRON_HEAD, IRON_HEAD] });
    const [first, second] = made.castings;
    expect(await go(made, { castings: [first?.castingId] })).toMatchObject({
      ok: true,
      output: { ticketWord: 'checked in', staying: [{ label: '40002' }] },
    });
    expect(await refusal(made, { castings: [first?.castingId] })).toMatchObject({
      message: '40001 is out of the house already.',
    });
    expect(await go(made, { castings: [second?.castingId] })).toMatchObject({ ok: true, output: { staying: [] } });
  });

  it.each([
    [{ proof: undefined }, 'proof', 'Say by which proof: claim ticket, identity paper, or known to us.'],
    [{ proof: 'identity' }, 'proofWords', 'Write which paper they showed.'],
    [{ takenBy: ' ' }, 'takenBy', 'Write who takes it.'],
    [{ signedOnPaper: false }, 'signatureFile', 'Let them sign after the count, on the screen or on paper.'],
    [{ castings: [], containers: [] }, 'castings', 'Choose what leaves.'],
  ])('wants to know who took it and by which proof: %j', async (changes, field, words) => {
    const made = await checkIn(t);
    expect(await refusal(made, changes)).toMatchObject({ fields: { [field]: words } });
  });

  it('does not hand goods to a person who may not collect, unless they bring the claim ticket', async () => {
    const customerId = await customerNamed(t, 'ferry');
    const { personId } = await t.send('customers/add-person', { customerId, person: { name: 'Finn' } }, { as: 'TV' });
    const made = await checkIn(t);
    expect(await refusal(made, { personId, proof: 'known' })).toMatchObject({
      fields: { personId: 'Finn may not collect for this customer. Ask for the claim ticket, or ring them.' },
    });
    expect(await go(made, { personId })).toMatchObject({ ok: true });
  });

  it('does not hand out a casting of another ticket', async () => {
    const made = await checkIn(t);
    const other = await checkIn(t);
    expect(await refusal(made, { castings: [other.castings[0]?.castingId] })).toMatchObject({
      code: 'release/other-ticket',
    });
  });

  it('answers once to one key, and once to two people at the door', async () => {
    const made = await checkIn(t);
    const first = await t.ask('racks/release-goods', input(made), { as: 'TV', key: 'release-0001' });
    const again = await t.ask('racks/release-goods', input(made), { as: 'TV', key: 'release-0001' });
    expect(again).toEqual(first);
    expect(await refusal(made, {}, 'OB')).toMatchObject({ message: '40001 is out of the house already.' });
  });
});

describe('racks/release-unpaid', () => {
  const unbilled = () => checkIn(t, { wishes: [{ operation: 'hot-tank' }] });

  it('keeps unbilled work here, and offers the way on (I23)', async () => {
    expect(await refusal(await unbilled())).toMatchObject({
      code: 'release/unpaid',
      message: expect.stringContaining('not invoiced yet'),
      offers: [{ request: 'racks/release-unpaid' }],
    });
  });

  it('lets it go with the name and reason of a lead or the owner only (I23)', async () => {
    const made = await unbilled();
    expect((await t.refuse('racks/release-unpaid', { ...input(made), reason: 'known well' }, { as: 'TV' })).kind).toBe(
      'not-allowed',
    );
    expect((await t.refuse('racks/release-unpaid', { ...input(made), reason: ' ' }, { as: 'OB' })).fields?.reason).toBe(
      'Write why it may go unpaid.',
    );
    await letGo(t, made);
    expect(
      t.db.sql('SELECT s.initials, r.unpaid_why AS why FROM release r JOIN staff s ON s.id = r.unpaid_ok_by'),
    ).toEqual([{ initials: 'OB', why: 'nothing was done' }]);
  });
});
