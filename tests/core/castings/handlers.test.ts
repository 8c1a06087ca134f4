import { beforeEach, describe, expect, it } from 'vitest';
import { checkIn, IRON_HEAD, letGo } from '#tests/kit/desk.ts';
import { startTestHost, type TestHost } from '#tests/kit/test-host.ts';

let t: TestHost;
beforeEach(async () => {
  t = await startTestHost();
});

describe('castings/find-by-tag', () => {
  it.each(['40001', ' 40001 ', 'BT C40001', 'bt c40001'])('finds the casting by %j', async (text) => {
    await checkIn(t);
    const { found, sentence } = await t.send('castings/find-by-tag', { text }, { as: 'JP' });
    expect(found).toMatchObject({ tagNo: 40_001, ticketNumber: 20_001, containerId: null });
    expect(sentence).toBe('Head 40001, ticket 20001');
  });

  it('finds the casting of a bag by its label', async () => {
    await checkIn(t, { castings: [{ ...IRON_HEAD, containers: [{ contents: 'caps' }] }] });
    const { found } = await t.send('castings/find-by-tag', { text: '40001-a' }, { as: 'JP' });
    expect(found).toMatchObject({ tagNo: 40_001, words: '40001-A: caps, ticket 20001' });
  });

  it.each(['', '99999', 'BT P4', '40001-AAAA', "40001' OR 1=1"])('says that nothing carries %j', async (text) => {
    await checkIn(t);
    const { found, sentence } = await t.send('castings/find-by-tag', { text }, { as: 'JP' });
    expect(found).toBeNull();
    expect(sentence).toContain('Nothing carries');
  });
});

describe('castings/mark-condition', () => {
  it('marks a place of the drawing and numbers the marks', async () => {
    const { castings } = await checkIn(t);
    const castingId = castings[0]?.castingId ?? 0;
    const first = await t.send(
      'castings/mark-condition',
      { castingId, mark: { condition: 'crack-chamber', x: 0, y: 10_000, severity: 3, words: 'between the seats' } },
      { as: 'JP' },
    );
    expect(first.suggests).toBeTruthy();
    await t.send('castings/mark-condition', { castingId, mark: { condition: 'weld-before' } }, { as: 'JP' });
    const { marks } = await t.send('castings/get-casting', { castingId }, { as: 'JP' });
    expect(marks.map((mark) => [mark.no, mark.condition, mark.severityWords, mark.x])).toEqual([
      [1, 'crack-chamber', 'bad', 0],
      [2, 'weld-before', null, null],
    ]);
  });

  it.each([
    [{ condition: 'no-such' }, 'mark.condition'],
    [{ condition: 'weld-before', x: 10_001, y: 0 }, 'mark.x'],
    [{ condition: 'weld-before', severity: 4 }, 'mark.severity'],
  ])('refuses %j at its field', async (mark, field) => {
    const { castings } = await checkIn(t);
    const error = await t.refuse(
      'castings/mark-condition',
      { castingId: castings[0]?.castingId ?? 0, mark: mark as never },
      { as: 'JP' },
    );
    expect(Object.keys(error.fields ?? {})).toContain(field);
  });
});

describe('castings/remove-mark', () => {
  it('takes a mark off before the signature, once', async () => {
    const { castings } = await checkIn(t, { castings: [{ ...IRON_HEAD, marks: [{ condition: 'weld-before' }] }] });
    const casting = await t.send('castings/get-casting', { castingId: castings[0]?.castingId ?? 0 }, { as: 'TV' });
    const markId = casting.marks[0]?.markId ?? 0;
    await t.send('castings/remove-mark', { markId }, { as: 'TV' });
    expect((await t.send('castings/get-casting', { tag: 40_001 }, { as: 'TV' })).marks).toEqual([]);
    expect((await t.refuse('castings/remove-mark', { markId }, { as: 'TV' })).kind).toBe('not-found');
  });
});

describe('castings/list-visits', () => {
  it('lists visits of a stamp, newest first', async () => {
    const first = await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K5' }] });
    await letGo(t, first);
    await checkIn(t, { castings: [{ ...IRON_HEAD, shopStamp: 'K5' }] });
    const { visits } = await t.send('castings/list-visits', { stamp: 'K5' }, { as: 'TV' });
    expect(visits.map((visit) => [visit.tagNo, visit.ticketNumber, visit.inHouse])).toEqual([
      [40_002, 20_002, true],
      [40_001, 20_001, false],
    ]);
    expect((await t.send('castings/list-visits', { stamp: 'nobody' }, { as: 'TV' })).visits).toEqual([]);
  });
});
