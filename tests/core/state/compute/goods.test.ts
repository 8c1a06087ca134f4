import { describe, expect, it } from 'vitest';
import type { Cents } from '#core/kernel/units.ts';
import { looseGoods, partWord, ticketMoneyWord } from '#core/state/compute/goods.ts';
import { at, casting, container, factsOf, item, part } from '../builders.ts';

describe('partWord', () => {
  it('goes from needed to fitted, first match from the top', () => {
    const words = [
      part(),
      part({ quotedAt: at(1) }),
      part({ source: 'customer', quotedAt: at(1) }),
      part({ orderedAt: at(2) }),
      part({ orderedAt: at(2), backOrderedAt: at(3) }),
      part({ orderedAt: at(2), backOrderedAt: at(3), hereAt: at(4) }),
      part({ hereAt: at(4), fittedAt: at(5) }),
      part({ fittedAt: at(5), returnedAt: at(6) }),
    ].map(partWord);
    expect(words).toEqual([
      'needed',
      'quoted',
      'customer bringing',
      'ordered',
      'back-ordered',
      'here',
      'fitted',
      'returned',
    ]);
  });
});

describe('ticketMoneyWord', () => {
  it('speaks for a ticket until its first invoice', () => {
    const { money } = factsOf();
    expect(ticketMoneyWord(money)).toBe('unbilled');
    expect(ticketMoneyWord({ ...money, held: 100 as Cents })).toBe('deposit held');
    expect(ticketMoneyWord({ ...money, invoices: 1 })).toBeNull();
  });
});

describe('looseGoods', () => {
  it("names the customer's own pieces that lie in no bag and have no fate", () => {
    const own = { customersOwn: true };
    expect(looseGoods(factsOf({ items: [item(own)] }))).toHaveLength(1);
    expect(looseGoods(factsOf({ items: [item({ ...own, containerId: 1 as never })] }))).toEqual([]);
    expect(looseGoods(factsOf({ items: [item({ ...own, fate: 'in_casting' })] }))).toEqual([]);
    expect(looseGoods(factsOf({ items: [item({ ...own, missing: true })] }))).toEqual([]);
    expect(looseGoods(factsOf({ items: [item(own)], castings: [casting(1, { outAt: at(1) })] }))).toEqual([]);
    expect(looseGoods(factsOf({ items: [item()] }))).toEqual([]);
  });

  it('wants old parts that go back in a bag of their own', () => {
    const back = { ticket: { oldPartsBack: true }, items: [item({ fate: 'replaced' })] };
    expect(looseGoods(factsOf(back))).toEqual(['The old parts go back: put them in a bag or box.']);
    expect(looseGoods(factsOf({ ...back, containers: [container({ oldReturn: true })] }))).toEqual([]);
    expect(looseGoods(factsOf({ ...back, ticket: {} }))).toEqual([]);
  });
});
