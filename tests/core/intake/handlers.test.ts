import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, IRON_HEAD } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});
const ITEMS = [
  { words: 'caps', expected: 5, counted: 5 },
  { words: 'valves', expected: 8, inside: true },
];
const made = () => checkIn(t, { castings: [{ ...IRON_HEAD, cameAssembled: true, items: ITEMS }] });
const items = async () => (await t.send('castings/get-casting', { tag: 40_001 }, { as: 'TV' })).items;

describe('intake/get-arrival-list', () => {
  it('gives what usually arrives, its counts and the conditions to look for', async () => {
    const list = await t.send('intake/get-arrival-list', { type: 'TW-4' }, { as: 'TV' });
    expect(list).toMatchObject({ kind: 'head', material: 'aluminium', kindWords: 'Head' });
    expect(list.items.find((item) => /caps/.test(item.words))).toMatchObject({
      mixRule: 'own_place',
      mixWords: 'belongs to its own place',
    });
    expect(list.conditions.map((one) => one.condition)).toContain('crack-chamber');
    expect(list.conditions.map((one) => one.condition)).not.toContain('crack-block');
  });
});

describe('intake/count-pieces', () => {
  it('counts the inside at teardown, where nobody could look before', async () => {
    await made();
    const valves = (await items()).find((item) => item.words === 'valves');
    const counted = await t.send(
      'intake/count-pieces',
      { itemId: valves?.itemId ?? 0, stage: 'teardown', count: 7 },
      { as: 'JP' },
    );
    expect(counted).toEqual({ countWords: '7 of 8, 1 short', short: true });
    expect((await items()).find((item) => item.words === 'valves')).toMatchObject({
      counted: 7,
      counts: [{ stageWords: 'at teardown', by: 'Jorun Pellathy' }],
    });
  });

  it('keeps every later count beside the first', async () => {
    await made();
    const caps = (await items())[0];
    await t.send(
      'intake/count-pieces',
      { itemId: caps?.itemId ?? 0, stage: 'after_wash', count: 4, explained: 'one under the grate' },
      { as: 'JP' },
    );
    await t.send('intake/count-pieces', { itemId: caps?.itemId ?? 0, stage: 'assembly', count: 5 }, { as: 'SO' });
    expect((await items())[0]).toMatchObject({
      counted: 5,
      countNow: 5,
      counts: [{ count: 4, explained: 'one under the grate' }, { count: 5 }],
    });
    expect(() => t.sqlite.prepare('UPDATE piece_count SET count = 5').run()).toThrow(/never changed/);
  });

  it('does not change what the customer signed', async () => {
    const { ticketId } = await made();
    await t.send('intake/sign-claim', { ticketId, how: 'on_paper' }, { as: 'TV' });
    const caps = (await items())[0];
    const error = await t.refuse(
      'intake/count-pieces',
      { itemId: caps?.itemId ?? 0, stage: 'arrival', count: 4 },
      { as: 'TV' },
    );
    expect(error.code).toBe('intake/conditions-locked');
  });

  it.each([-1, 1.5, 10_001])('does not count %s pieces', async (count) => {
    await made();
    const error = await t.refuse(
      'intake/count-pieces',
      { itemId: (await items())[0]?.itemId ?? 0, stage: 'teardown', count },
      { as: 'JP' },
    );
    expect(error.fields?.count).toBeTruthy();
  });
});

describe('intake/add-container', () => {
  it('letters containers of a casting and of a ticket, and moves lines into them', async () => {
    const { ticketId, castings } = await made();
    const castingId = castings[0]?.castingId ?? 0;
    const caps = (await items())[0]?.itemId ?? 0;
    const first = await t.send(
      'intake/add-container',
      { ticketId, castingId, container: { contents: 'caps in order' }, items: [caps] },
      { as: 'JP' },
    );
    const second = await t.send(
      'intake/add-container',
      { ticketId, castingId, container: { contents: 'springs' } },
      { as: 'JP' },
    );
    const third = await t.send(
      'intake/add-container',
      { ticketId, container: { kind: 'box', contents: 'gasket set', ownerMark: 'customers_own' } },
      { as: 'TV' },
    );
    expect([first.label, second.label, third.label]).toEqual(['40001-A', '40001-B', '20001-A']);
    expect((await items())[0]?.containerLabel).toBe('40001-A');
  });

  it('does not put a bag of one ticket on the casting of another (I35)', async () => {
    const first = await made();
    const other = await checkIn(t);
    const error = await t.refuse(
      'intake/add-container',
      { ticketId: other.ticketId, castingId: first.castings[0]?.castingId ?? 0, container: { contents: 'x' } },
      { as: 'TV' },
    );
    expect(error.message).toContain('This bag is on another ticket.');
    const foreign = await t.send(
      'intake/add-container',
      { ticketId: other.ticketId, container: { contents: 'x' } },
      { as: 'TV' },
    );
    const fate = await t.refuse(
      'intake/set-fate',
      { fates: [{ itemId: (await items())[0]?.itemId ?? 0, fate: 'in_bag', containerId: foreign.containerId }] },
      { as: 'JP' },
    );
    expect(fate.code).toBe('intake/other-ticket');
  });
});

describe('intake/set-fate', () => {
  it('says where pieces ended, and asks which bag', async () => {
    await made();
    const [caps, valves] = await items();
    const error = await t.refuse(
      'intake/set-fate',
      { fates: [{ itemId: caps?.itemId ?? 0, fate: 'in_bag' }] },
      { as: 'JP' },
    );
    expect(error.fields).toEqual({ 'fates.0.containerId': 'Which bag holds caps? Choose it.' });
    await t.send(
      'intake/set-fate',
      {
        fates: [
          { itemId: caps?.itemId ?? 0, fate: 'in_casting' },
          { itemId: valves?.itemId ?? 0, fate: 'replaced' },
        ],
      },
      { as: 'JP' },
    );
    expect((await items()).map((item) => item.fateWords)).toEqual(['in the casting', 'replaced']);
  });
});

describe('intake/add-item', () => {
  it('writes what turns up later, and what is missing', async () => {
    const { castings } = await made();
    await t.send(
      'intake/add-item',
      { castingId: castings[0]?.castingId ?? 0, item: { words: 'dowels', expected: 2, missing: true } },
      { as: 'JP' },
    );
    expect((await items()).at(-1)).toMatchObject({
      words: 'dowels',
      missing: true,
      countWords: 'missing at arrival',
      short: true,
    });
  });
});

describe('intake/seal-container', () => {
  it('seals a bag with its count', async () => {
    const { ticketId } = await made();
    const bag = await t.send('intake/add-container', { ticketId, container: { contents: 'locks' } }, { as: 'JP' });
    await t.send('intake/seal-container', { containerId: bag.containerId, count: 16 }, { as: 'JP' });
    const page = await t.send('tickets/get-ticket', { ticketId }, { as: 'TV' });
    expect(page.containers[0]).toMatchObject({ count: 16, sealedAt: '2026-03-09T14:00:00.000Z' });
  });
});
