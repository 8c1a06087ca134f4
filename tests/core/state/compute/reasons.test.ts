import { describe, expect, it } from 'vitest';
import { know } from '#core/state/compute/live.ts';
import {
  dangerReasons,
  holdReasons,
  partReasons,
  reason,
  ruleInput,
  ruleReasons,
} from '#core/state/compute/reasons.ts';
import { GROUPS, RULES, wordsOf } from '../../catalogue/compute/first-catalogue.ts';
import { at, casting, factsOf, hold, item, operation, part } from '../builders.ts';

const WASH = operation(1, { code: 'aluminium-wash', gate: 'clean', groups: ['clean'] });
const CAUSTIC = operation(1, { code: 'hot-tank', gate: 'clean', groups: ['caustic', 'clean'] });
const known = (wanted: Parameters<typeof factsOf>[0]) => know(factsOf({ operations: [WASH], ...wanted }));
const danger = (wanted: Parameters<typeof factsOf>[0], of = WASH) =>
  dangerReasons(known(wanted), of).map((r) => r.words);

describe('dangerReasons', () => {
  it('forbids by the metal before anything else', () => {
    expect(danger({ castings: [casting(1, { material: 'not_known' })] })).toEqual([
      'METAL NOT KNOWN: no wash until a person confirms the metal. Does a magnet stick?',
    ]);
    expect(danger({ castings: [casting(1, { material: 'aluminium' })] }, CAUSTIC)).toEqual([
      'ALUMINIUM: no caustic. Use the aluminium-safe wash.',
    ]);
    expect(danger({ castings: [casting(1, { metalConfirmedAt: null })] }, CAUSTIC)).toEqual([
      'Confirm the metal first: does a magnet stick?',
    ]);
    expect(danger({}, CAUSTIC)).toEqual([]);
  });

  it('waits for every piece that must be off, not for what is missing, off, or inside a bare casting', () => {
    const seals = { words: 'stem seals', removeBeforeWash: true };
    expect(danger({ items: [item(seals)] })).toEqual(['Take off before the wash: stem seals.']);
    expect(danger({ items: [item({ ...seals, counted: null })] })).toHaveLength(1);
    expect(danger({ items: [item({ ...seals, removedAt: at(1) })] })).toEqual([]);
    expect(danger({ items: [item({ ...seals, missing: true })] })).toEqual([]);
    expect(danger({ items: [item({ ...seals, counted: 0 })] })).toEqual([]);
    expect(danger({ items: [item({ ...seals, inside: true })], castings: [casting(1, { bare: true })] })).toEqual([]);
    expect(danger({ items: [item(seals)] }, operation(1, { gate: 'machine' }))).toEqual([]);
  });
});

describe('ruleReasons', () => {
  const rules = { rules: RULES, groups: GROUPS, kindWords: new Map([['cam-bore-check', wordsOf('cam-bore-check')]]) };
  const surface = operation(3, { code: 'surface-head', gate: 'machine' });

  it('splits hard, soft and waived, and shows a soft rule once', () => {
    const seat = operation(2, { code: 'seat-cut', gate: 'machine' });
    const crack = operation(1, { code: 'pressure-test', gate: 'crack', finishedAt: at(1) });
    const castings = [casting(1, { thicknessAt: at(2) })];
    const base = { ...rules, castings, operations: [crack, seat, surface] };
    const found = ruleReasons(known(base), surface);
    expect(found.hard.map((r) => r.rule?.no)).toEqual([]);
    expect(found.soft.map((r) => r.rule?.no)).toEqual([17]);
    const rule = found.soft[0]?.rule?.id ?? 0;
    expect(ruleReasons(known({ ...base, shown: new Set([`3:${rule}`]) }), surface).soft).toEqual([]);
  });

  it('says the way on: tick a fact, measure, confirm the metal', () => {
    const ways = (code: string, more = {}) =>
      ruleReasons(known({ ...rules, ...more, operations: [operation(1, { code })] }), operation(1, { code })).hard.map(
        (r) => r.wayOn?.request,
      );
    expect(ways('lash-set')).toEqual(['floor/tick-fact']);
    expect(ways('hot-tank', { castings: [casting(1, { metalConfirmedAt: null })] })).toEqual([
      'castings/confirm-metal',
    ]);
    expect(ways('surface-head')).toContain('readings/list-tables');
  });
});

describe('ruleInput', () => {
  it('takes facts from records as well as from ticks', () => {
    const of = (more: Parameters<typeof casting>[1]) => {
      const all = known({ castings: [casting(1, { arrivalPhotos: 0, metalConfirmedAt: null, ...more })] });
      const [first] = all.facts.castings;
      return first ? [...ruleInput(all, first, ['required-readings']).facts].sort() : [];
    };
    expect(of({})).toEqual(['added-work-answered', 'required-readings']);
    expect(of({ arrivalPhotos: 2, thicknessAt: at(1), pistonSizeAt: at(1), ticked: new Set(['cam-fitted']) })).toEqual([
      'added-work-answered',
      'cam-fitted',
      'piston-size',
      'required-readings',
      'tag-and-photos',
      'thickness-before',
    ]);
  });
});

describe('holdReasons', () => {
  it('hears holds on the operation, its casting and its ticket, none of another casting', () => {
    const on = (more: Parameters<typeof hold>[0]) => holdReasons(known({ holds: [hold(more)] }), WASH).length;
    expect([
      on({}),
      on({ castingId: 1 as never }),
      on({ operationId: 1 as never }),
      on({ castingId: 2 as never }),
    ]).toEqual([1, 1, 1, 0]);
  });
});

describe('partReasons', () => {
  it('waits for the part that blocks this kind of operation', () => {
    const waits = (more: Parameters<typeof part>[0]) => partReasons(known({ parts: [part(more)] }), WASH).length;
    expect([waits({ blocks: 1 }), waits({ blocks: 2 }), waits({ blocks: 1, hereAt: at(1) })]).toEqual([1, 0, 0]);
  });
});

describe('reason', () => {
  it('stops by default', () => {
    expect(reason('part', 'Waits.', 'waits')).toMatchObject({ strength: 'hard', wayOn: null, rule: null });
  });
});
