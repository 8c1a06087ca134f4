import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { id } from '#core/kernel/ids.ts';
import { cents, priceE4 } from '#core/kernel/units.ts';
import {
  type BookCasting,
  type BookKind,
  type BookPackage,
  draftOperation,
  draftPackage,
  type PriceBook,
  packageOperations,
} from '#core/lines/compute/book.ts';

const on = day('2026-03-09');
const rate = (price: number) => [
  { list: 'standard', price: priceE4(price * 10_000), lineMinimum: cents(0), from: day('2026-01-01') },
];
const kind = (n: number, code: string, groups: readonly string[] = [], more: object = {}): BookKind => ({
  id: id(n),
  code,
  gate: 'none',
  section: 'clean',
  words: code,
  position: n,
  customerWords: code,
  taxClass: 'labour_repair',
  workCentreId: id(1),
  retired: false,
  uses: new Map([
    ['head', { chargeUnit: 'each', countFrom: 'one', setup: 600, unattended: 0, times: [], rates: rate(45), ...more }],
  ]),
  fits: [],
  groups,
});
const caustic = kind(1, 'hot tank', ['clean', 'caustic']);
const safe = kind(2, 'alu wash', ['clean']);
const seats = kind(3, 'cut seats', [], {
  countFrom: 'seats',
  chargeUnit: 'seat',
  times: [{ count: 'seats', perUnit: 180 }],
});
const pack: BookPackage = {
  id: id(1),
  code: 'valve-job',
  shopWords: 'valve job',
  customerWords: 'valve job',
  castingKind: 'head',
  taxClass: 'labour_repair',
  retired: false,
  items: [
    { kind: id(1), metal: 'iron' },
    { kind: id(2), metal: 'aluminium' },
    { kind: id(3), metal: 'any' },
  ],
  rates: new Map([[7, rate(295)]]),
};
const book: PriceBook = {
  kinds: new Map([caustic, safe, seats].map((k) => [k.id, k])),
  packages: new Map([[1, pack]]),
  factors: [],
  rules: [],
  groups: new Map(),
};
const head = (metal: BookCasting['metal'], material: BookCasting['material'], seatCount = 8): BookCasting => ({
  kind: 'head',
  castingTypeId: 7,
  typeName: 'a head',
  metal,
  material,
  camLayout: 'ohv',
  fuel: 'petrol',
  guideStyle: 'insert',
  waterJacket: true,
  heavyDiesel: false,
  closeTolerance: false,
  counts: { seats: seatCount },
});
const pricing = { list: 'standard', on, factors: [] };

describe('draftOperation', () => {
  it('plans by the count that is charged, also a typed one', () => {
    const whole = draftOperation(book, seats, head('iron', 'iron_grey'), pricing, null);
    expect('draft' in whole && whole.draft.operations[0]).toMatchObject({ units: 8, planned: 600 + 8 * 180 });
    const some = draftOperation(book, seats, head('iron', 'iron_grey'), pricing, 3);
    expect('draft' in some && some.draft.operations[0]).toMatchObject({ units: 3, planned: 600 + 3 * 180 });
  });

  it('lets a typed count stand where the casting has none of it', () => {
    expect('refusal' in draftOperation(book, seats, head('iron', 'iron_grey', 0), pricing, null)).toBe(true);
    expect('draft' in draftOperation(book, seats, head('iron', 'iron_grey', 0), pricing, 2)).toBe(true);
  });

  it('refuses caustic on aluminium and names the wash that fits', () => {
    const drafted = draftOperation(book, caustic, head('aluminium', 'aluminium'), pricing, null);
    expect('refusal' in drafted && drafted.refusal).toMatchObject({ priceOnly: false, fits: [{ code: 'alu wash' }] });
  });
});

describe('packageOperations', () => {
  const codes = (casting: BookCasting) => {
    const inside = packageOperations(book, pack, casting);
    return 'operations' in inside ? inside.operations.map((step) => step.kind.code) : inside.refusal.words;
  };
  it('takes the wash of the metal, and the harmless one while the metal is not known', () => {
    expect(codes(head('iron', 'steel'))).toEqual(['hot tank', 'cut seats']);
    expect(codes(head('aluminium', 'aluminium'))).toEqual(['alu wash', 'cut seats']);
    expect(codes(head('other', 'other'))).toEqual(['alu wash', 'cut seats']);
    expect(codes(head('not_known', 'not_known'))).toEqual(['alu wash', 'cut seats']);
  });
  it('leaves out what does not arise', () => {
    expect(codes(head('iron', 'steel', 0))).toEqual(['hot tank']);
  });
});

describe('draftPackage', () => {
  it('charges the rate of the type, or an agreed price, per casting', () => {
    const list = draftPackage(book, pack, head('iron', 'steel'), pricing, { castings: 2, price: null });
    expect('draft' in list && list.draft.offer).toMatchObject({ amount: 59_000, working: '2 × 295.00' });
    const agreed = draftPackage(book, pack, head('iron', 'steel'), pricing, { castings: 2, price: priceE4(2_500_000) });
    expect('draft' in agreed && agreed.draft.offer.amount).toBe(50_000);
  });

  it('is not sold for a type without a price, nor for another kind', () => {
    const other = draftPackage(book, pack, { ...head('iron', 'steel'), castingTypeId: 8 }, pricing, {
      castings: 1,
      price: null,
    });
    expect('refusal' in other && other.refusal.priceOnly).toBe(true);
    const block = draftPackage(book, pack, { ...head('iron', 'steel'), kind: 'block' }, pricing, {
      castings: 1,
      price: null,
    });
    expect('refusal' in block && block.refusal).toMatchObject({
      priceOnly: false,
      words: expect.stringContaining('is for a head'),
    });
  });
});
