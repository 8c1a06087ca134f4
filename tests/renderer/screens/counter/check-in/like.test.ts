import { describe, expect, it } from 'vitest';
import { type LikeParts, likeTicket } from '#renderer/screens/counter/check-in/like.ts';
import { EMPTY_CHECK_IN } from '#renderer/screens/counter/check-in/typed.ts';

const casting = {
  type: 'BV-6',
  typeName: 'BV-6 head',
  typePrivate: false,
  kindWords: 'Head',
  closeTolerance: false,
  limits: 2,
};
const parts = {
  ticketId: 9,
  like: {
    number: 20455,
    engine: null,
    engineWords: null,
    useWords: 'boat',
    gasket: 'mls',
    valveLift: '9.60 mm',
    castings: [
      { ...casting, position: 'left', pair: 1 },
      { ...casting, position: 'right', pair: 1 },
    ],
    wishes: [
      { castings: [0, 1], operation: 'pressure-test', package: null, words: 'Pressure test', quantity: null },
      { castings: [1], operation: null, package: 'valve-job', words: 'Valve job', quantity: null },
      { castings: [], operation: 'gone', package: null, words: 'Something retired', quantity: 3 },
    ],
  },
  kinds: [{ id: 4, code: 'pressure-test', shopWords: 'pressure test', customerWords: 'leak test', uses: [] }],
  packages: [{ id: 2, code: 'valve-job', shopWords: 'valve job', customerWords: 'valve job' }],
  types: [{ id: 7, code: 'BV-6', kind: 'head' }],
} as unknown as LikeParts;

describe('likeTicket', () => {
  it("copies types and work under today's words, and neither metal, numbers nor prices", () => {
    const typed = likeTicket(EMPTY_CHECK_IN, parts);

    expect(
      typed.castings.map((one) => [one.type, one.typeId, one.position, one.pair, one.material, one.castingNumber]),
    ).toEqual([
      ['BV-6', 7, 'left', 1, null, ''],
      ['BV-6', 7, 'right', 1, null, ''],
    ]);
    expect(typed.wishes.map((wish) => [wish.kind, wish.id, wish.words, wish.castings, wish.quantity])).toEqual([
      ['operation', 4, 'pressure test', [], ''],
      ['package', 2, 'valve job', ['c2'], ''],
      ['said', null, 'Something retired', [], '3'],
    ]);
    expect(typed).toMatchObject({ like: 9, gasket: 'mls', lift: '9.60 mm', use: 'boat' });
  });

  it('adds to what stands there: its castings are a pair of their own and their work is theirs alone', () => {
    const twice = likeTicket(likeTicket(EMPTY_CHECK_IN, parts), parts);

    expect(twice.castings.map((one) => one.pair)).toEqual([1, 1, 2, 2]);
    expect(twice.wishes[3]?.castings).toEqual(['c3', 'c4']);
    expect(new Set(twice.wishes.map((wish) => wish.key)).size).toBe(6);
  });
});
