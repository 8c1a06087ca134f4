import { beforeEach, describe, expect, it } from 'vitest';
import { ALUMINIUM_HEAD, checkIn, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const put = (text: string, place: string) => t.send('racks/put-away', { things: [{ text }], place }, { as: 'JP' });

describe('racks/put-away', () => {
  it('puts castings and bags away by what is read from tag and place', async () => {
    const made = await checkIn(t, { castings: [{ ...ALUMINIUM_HEAD, containers: [{ contents: 'caps' }] }] });
    expect(
      await t.send(
        'racks/put-away',
        { things: [{ text: 'BT C40001' }, { text: '40001-a' }], place: 'BT PW2' },
        { as: 'JP' },
      ),
    ).toMatchObject({ place: 'W2', words: '2 pieces in W2', things: ['40001', '40001-A'], warnings: [] });
    const page = await t.send('tickets/get-ticket', { ticketId: made.ticketId }, { as: 'TV' });
    expect(page.castings[0]).toMatchObject({ place: 'W2', containers: [{ place: 'W2' }] });
  });

  it('refuses the wrong metal and puts nothing away', async () => {
    await checkIn(t);
    const error = await t.refuse('racks/put-away', { things: [{ text: '40001' }], place: 'W2' }, { as: 'JP' });
    expect(error.fields).toEqual({ 'things.0': 'W2 is for aluminium only; 40001 is IRON. Choose another place.' });
    expect((await t.send('racks/list-place', { place: 'W2' }, { as: 'JP' })).things).toEqual([]);
  });

  it('refuses a weight the place does not carry', async () => {
    const place = t.db.sql<{ code: string; max: number }>(
      'SELECT code, max_weight_g AS max FROM rack_place WHERE max_weight_g IS NOT NULL ORDER BY max_weight_g',
    )[0];
    await checkIn(t, { castings: [{ ...IRON_HEAD, weight: (place?.max ?? 0) + 1 }] });
    const error = await t.refuse(
      'racks/put-away',
      { things: [{ text: '40001' }], place: place?.code ?? '' },
      { as: 'JP' },
    );
    expect(error.code).toBe('racks/does-not-fit');
  });

  it('warns about a casting in doubt that is not put in quarantine', async () => {
    await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K1' }] });
    await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K1' }] });
    const arrival =
      t.db.sql<{ code: string }>(
        "SELECT code FROM rack_place WHERE purpose = 'arrival' AND only_metal IS NULL ORDER BY code LIMIT 1",
      )[0]?.code ?? '';
    const doubt =
      t.db.sql<{ code: string }>("SELECT code FROM rack_place WHERE purpose = 'quarantine' LIMIT 1")[0]?.code ?? '';
    expect((await put('40001', arrival)).warnings[0]).toContain('which casting is this?');
    expect((await put('40001', doubt)).warnings).toEqual([]);
  });

  it.each([
    ['99999', 'W2', 'things.0.text'],
    ['40001', 'NOWHERE', undefined],
  ])('does not know %s in %s', async (text, place, field) => {
    await checkIn(t);
    const error = await t.refuse('racks/put-away', { things: [{ text }], place }, { as: 'JP' });
    expect(Object.keys(error.fields ?? {})[0]).toBe(field);
  });
});

describe('racks/list-place', () => {
  it('shows what stands there now, by the last move', async () => {
    await checkIn(t, { castings: [ALUMINIUM_HEAD] });
    await put('40001', 'W2');
    expect((await t.send('racks/list-place', { place: 'w2' }, { as: 'JP' })).things).toMatchObject([
      { label: '40001', customer: 'Ferry Line', by: 'Jorun Pellathy', metalWord: 'ALUMINIUM' },
    ]);
    const other =
      t.db.sql<{ code: string }>(
        "SELECT code FROM rack_place WHERE purpose = 'waiting' AND only_metal IS NULL LIMIT 1",
      )[0]?.code ?? '';
    await put('40001', other);
    expect((await t.send('racks/list-place', { place: 'W2' }, { as: 'JP' })).things).toEqual([]);
    const { places } = await t.send('racks/list-places', {}, { as: 'JP' });
    expect(places.find((place) => place.code === other)).toMatchObject({ castings: 1, containers: 0 });
  });
});

describe('racks/get-pick-list', () => {
  it('lists what to fetch by place, and what was never put away', async () => {
    const made = await checkIn(t, { castings: [{ ...ALUMINIUM_HEAD, containers: [{ contents: 'caps' }] }] });
    await put('40001', 'W2');
    const list = await t.send('racks/get-pick-list', { ticketIds: [made.ticketId] }, { as: 'TV' });
    expect(list).toMatchObject({ words: '2 pieces from 1 place', nowhere: 1 });
    expect(list.things.map((thing) => [thing.label, thing.place])).toEqual([
      ['40001', 'W2'],
      ['40001-A', null],
    ]);
  });
});

describe('racks/add-place', () => {
  it('adds a place of the shop once, and retires it while it is empty', async () => {
    const { placeId } = await t.send(
      'racks/add-place',
      { code: 'Z-9', purpose: 'ready', maxWeight: 30_000 },
      { as: 'OB' },
    );
    expect((await t.refuse('racks/add-place', { code: 'z-9', purpose: 'ready' }, { as: 'OB' })).code).toBe(
      'racks/code-used',
    );
    expect((await t.refuse('racks/add-place', { code: 'Z-8', purpose: 'ready' }, { as: 'TV' })).kind).toBe(
      'not-allowed',
    );
    await checkIn(t);
    await put('40001', 'Z-9');
    expect((await t.refuse('racks/retire-place', { placeId, seenVersion: 1 }, { as: 'OB' })).message).toBe(
      'Z-9 holds 1 piece. Move it somewhere else first.',
    );
    const waiting =
      t.db.sql<{ code: string }>(
        "SELECT code FROM rack_place WHERE purpose = 'waiting' AND only_metal IS NULL LIMIT 1",
      )[0]?.code ?? '';
    await put('40001', waiting);
    await t.send('racks/retire-place', { placeId, seenVersion: 1 }, { as: 'OB' });
    expect((await t.refuse('racks/list-place', { place: 'Z-9' }, { as: 'JP' })).kind).toBe('not-found');
  });
});
