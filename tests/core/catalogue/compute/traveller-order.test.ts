/** Order on the traveller. The end (machining, last wash, assembly, vacuum test, wrap): common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { RuleCasting } from '#core/catalogue/compute/order-rules.ts';
import { findCircle, travellerOrder } from '#core/catalogue/compute/traveller-order.ts';
import { GROUPS, KINDS, kindOf, kindsOn, RULES } from './first-catalogue.ts';

const HEAD: RuleCasting = { kind: 'head', metal: 'aluminium', camLayout: 'dohc', fuel: 'petrol' };
const order = (codes: readonly string[], casting: RuleCasting = HEAD) =>
  travellerOrder(
    codes.map((code, key) => ({ key, kind: kindOf(code) })),
    RULES,
    GROUPS,
    casting,
  ).map((item) => item.kind.code);

describe('travellerOrder', () => {
  it('ends with all machining, last wash, assembly, vacuum test, wrap', () => {
    const wanted = [
      'disassemble-head',
      'aluminium-wash',
      'pressure-test',
      'guide-size',
      'seat-cut',
      'valve-grind',
      'surface-head',
      'final-clean',
      'assemble-head',
      'vacuum-test',
      'oil-wrap',
    ];
    expect(order([...wanted].reverse())).toEqual(wanted);
  });

  it('tests a repair again after it, although both are crack checks', () => {
    expect(order(['pressure-retest', 'weld-repair', 'pressure-test', 'aluminium-wash'])).toEqual([
      'aluminium-wash',
      'pressure-test',
      'weld-repair',
      'pressure-retest',
    ]);
  });

  it('strips a block before the wash that stands earlier in the catalogue', () => {
    const block = { kind: 'block', metal: 'iron', camLayout: 'none', fuel: 'petrol' } as const;
    expect(order(['hone-cylinder', 'bore-cylinder', 'final-clean', 'hot-tank', 'strip-block'], block)).toEqual([
      'strip-block',
      'hot-tank',
      'bore-cylinder',
      'hone-cylinder',
      'final-clean',
    ]);
  });

  it('keeps the order of two alike and loses nothing, whatever comes in', () => {
    const twice = order(['seat-cut', 'seat-cut', 'guide-size']);
    expect(twice).toEqual(['guide-size', 'seat-cut', 'seat-cut']);
    expect(order(KINDS.map((kind) => kind.code))).toHaveLength(KINDS.length);
  });

  it('obeys every matching rule on a head with everything on it', () => {
    const codes = order(kindsOn('head').map((kind) => kind.code));
    const at = (code: string) => codes.indexOf(code);
    for (const [first, then] of [
      ['guide-replace', 'seat-cut'],
      ['seat-cut', 'surface-head'],
      ['surface-head', 'final-clean'],
      ['final-clean', 'assemble-head'],
      ['assemble-head', 'vacuum-test'],
      ['installed-height', 'final-clean'],
      ['vacuum-test', 'oil-wrap'],
    ] as const) {
      expect([first, then, at(first) < at(then)]).toEqual([first, then, true]);
    }
  });

  it('still gives every item when rules wait for each other', () => {
    const circle = [
      { ...RULES[1], id: 1, first: 'seat-cut', next: 'guide-size', ifKind: null },
      { ...RULES[1], id: 2, first: 'guide-size', next: 'seat-cut', ifKind: null },
    ] as typeof RULES;
    const items = ['seat-cut', 'guide-size'].map((code, key) => ({ key, kind: kindOf(code) }));
    expect(
      travellerOrder(items, circle, GROUPS, HEAD)
        .map((i) => i.kind.code)
        .sort(),
    ).toEqual(['guide-size', 'seat-cut']);
  });
});

describe('findCircle', () => {
  const castings = [
    'head',
    'block',
    'crank',
    'rod_set',
    'flywheel',
    'intake_manifold',
    'exhaust_manifold',
    'cover',
  ].flatMap((kind) =>
    (['iron', 'aluminium', 'other'] as const).flatMap((metal) =>
      ['none', 'side', 'ohv', 'sohc', 'dohc'].flatMap((camLayout) =>
        ['petrol', 'diesel', 'gas', 'other'].map((fuel) => ({ kind, metal, camLayout, fuel })),
      ),
    ),
  );

  it('finds none in any combination of kind, metal, cam and fuel of the first catalogue', () => {
    expect(castings).toHaveLength(8 * 3 * 5 * 4);
    for (const casting of castings) {
      expect([casting, findCircle(KINDS, RULES, GROUPS, casting)]).toEqual([casting, undefined]);
    }
  });

  it('names a circle that a new rule would make', () => {
    const more = [
      ...RULES,
      { ...RULES[1], id: 999, first: 'vacuum-test', next: 'guide-size', ifKind: null } as (typeof RULES)[number],
    ];
    const circle = findCircle(KINDS, more, GROUPS, HEAD);
    expect(circle?.[0]).toBe(circle?.at(-1));
    expect(circle).toContain('vacuum-test');
    expect(circle).toContain('guide-size');
  });
});
