/**
 * Order rules against the shop floor's own table of what comes before what. Source of the table: common practice, no
 * source. The worked example is the project's own model of a half-done aluminium head.
 */
import { describe, expect, it } from 'vitest';
import {
  applies,
  evaluateOperation,
  evaluateStep,
  holds,
  type RuleCasting,
  type RuleInput,
  type RuleOperation,
  type Waiver,
} from '#core/catalogue/compute/order-rules.ts';
import { GROUPS, kindOf, RULES, wordsOf } from './first-catalogue.ts';

const DOHC: RuleCasting = { kind: 'head', metal: 'aluminium', camLayout: 'dohc', fuel: 'petrol' };
const IRON_HEAD: RuleCasting = { kind: 'head', metal: 'iron', camLayout: 'ohv', fuel: 'petrol' };
const BLOCK: RuleCasting = { kind: 'block', metal: 'iron', camLayout: 'none', fuel: 'petrol' };
const DONE = '2026-03-09T10:00:00.000Z';

type Row = readonly [code: string, doneAt?: string | null];

function job(casting: RuleCasting, rows: readonly Row[], more: Partial<RuleInput> = {}) {
  const operations: RuleOperation[] = rows.map(([code, doneAt], index) => ({
    id: index + 1,
    castingId: 30918,
    pair: null,
    kind: kindOf(code),
    doneAt: doneAt ?? null,
  }));
  const input: RuleInput = {
    rules: RULES,
    groups: GROUPS,
    casting,
    operations,
    facts: new Set(),
    waivers: [],
    wordsOf,
    ...more,
  };
  const of = (code: string) => {
    const target = operations.findLast((o) => o.kind.code === code);
    if (!target) throw new Error(`no ${code}`);
    return evaluateOperation(input, target);
  };
  return { input, of, operations };
}

/** What stands unmet and hard before an operation, by rule number. */
const stops = (casting: RuleCasting, rows: readonly Row[], code: string, facts: readonly string[] = []) =>
  job(casting, rows, { facts: new Set(facts) })
    .of(code)
    .filter((r) => r.state === 'unmet' && r.strength === 'hard')
    .map((r) => r.rule.no);

describe('evaluateOperation', () => {
  const rows: Row[] = [
    ['aluminium-wash', DONE],
    ['pressure-test', DONE],
    ['guide-size'],
    ['seat-cut'],
    ['surface-head'],
  ];

  it('reproduces the worked example: tag 30918, aluminium, overhead cams, guides started', () => {
    const { of } = job(DOHC, rows);
    const seat = of('seat-cut').filter((r) => r.strength === 'hard');
    expect(seat.map((r) => [r.rule.no, r.state])).toEqual([
      [12, 'unmet'],
      [13, 'unmet'],
    ]);
    expect(seat[1]?.missing.map((m) => m.words)).toEqual([wordsOf('guide-size')]);
    const surface = of('surface-head');
    expect(surface.map((r) => [r.rule.no, r.strength, r.state])).toEqual([
      [11, 'hard', 'unmet'],
      [24, 'hard', 'unmet'],
      [17, 'soft', 'unmet'],
    ]);
    expect(surface[0]?.words).toContain('it is not on the ticket (bent cam line)');
    expect(surface[1]?.words).toBe('Measure the thickness first.');
  });

  it('lets a waived rule pass with its mark, and the next one still stops', () => {
    const { operations } = job(DOHC, rows);
    const target = operations.find((o) => o.kind.code === 'surface-head')?.id ?? 0;
    const rule = RULES.find((r) => r.no === 11 && r.ifCamLayout === 'dohc')?.id ?? 0;
    const waiver: Waiver = {
      ruleId: rule,
      operationId: target,
      reason: 'cam line measured by customer, sheet kept',
      by: 'BL',
      at: DONE,
    };
    const results = job(DOHC, rows, { waivers: [waiver] }).of('surface-head');
    expect(results.find((r) => r.rule.no === 11)).toMatchObject({ state: 'waived', waiver });
    expect(results.find((r) => r.rule.no === 24)?.state).toBe('unmet');
  });

  it('says softly that a before was done again after', () => {
    const { of } = job(IRON_HEAD, [
      ['guide-size', '2026-03-09T12:00:00.000Z'],
      ['seat-cut', '2026-03-09T11:00:00.000Z'],
    ]);
    const again = of('seat-cut').find((r) => r.rule.no === 13);
    expect(again).toMatchObject({ state: 'again', strength: 'soft' });
    expect(again?.words).toMatch(/was done again after/);
  });

  it('looks at the pair or the whole ticket only where the rule says so', () => {
    const rule = {
      ...RULES[0],
      id: 900,
      no: 900,
      first: 'hot-tank',
      next: 'mag-particle-check',
      strength: 'hard',
    } as const;
    const other: RuleOperation = { id: 9, castingId: 2, pair: 1, kind: kindOf('hot-tank'), doneAt: null };
    const target: RuleOperation = { id: 1, castingId: 1, pair: 1, kind: kindOf('mag-particle-check'), doneAt: null };
    const results = (scope: 'casting' | 'pair' | 'ticket', pair: number | null) =>
      evaluateOperation(
        {
          ...job(IRON_HEAD, []).input,
          rules: [
            {
              ...rule,
              need: 'if_present',
              scope,
              ifKind: null,
              ifMetal: null,
              ifCamLayout: null,
              ifFuel: null,
              waiver: 'none',
              why: 'x',
            },
          ],
          operations: [{ ...other, pair }, target],
        },
        target,
      ).length;
    expect([results('casting', 1), results('pair', 1), results('pair', 2), results('ticket', null)]).toEqual([
      0, 1, 0, 1,
    ]);
  });

  // Rows of the table "what must be done first", hard ones: [first, before, rule].
  it.each([
    ['disassemble-head', 'hot-tank', 2, IRON_HEAD],
    ['hot-tank', 'mag-particle-check', 4, IRON_HEAD],
    ['hot-tank', 'guide-check', 4, IRON_HEAD],
    ['mag-particle-check', 'seat-cut', 5, IRON_HEAD],
    ['weld-repair', 'pressure-retest', 8, DOHC],
    ['straighten', 'surface-head', 10, DOHC],
    ['cam-bore-check', 'surface-head', 11, DOHC],
    ['guide-replace', 'seat-insert', 12, IRON_HEAD],
    ['guide-size', 'seat-cut', 13, IRON_HEAD],
    ['seat-insert', 'seat-cut', 14, IRON_HEAD],
    ['seat-cut', 'installed-height', 18, IRON_HEAD],
    ['seal-boss-cut', 'assemble-head', 20, IRON_HEAD],
    ['surface-head', 'final-clean', 21, IRON_HEAD],
    ['final-clean', 'assemble-head', 21, IRON_HEAD],
    ['assemble-head', 'vacuum-test', 22, IRON_HEAD],
    ['strip-block', 'hot-tank', 26, BLOCK],
    ['line-hone', 'deck-block', 27, BLOCK],
    ['dry-sleeve', 'bore-cylinder', 31, BLOCK],
    ['bore-cylinder', 'hone-cylinder', 33, BLOCK],
    ['hone-cylinder', 'final-clean', 34, BLOCK],
    ['straighten', 'pressure-retest', 40, DOHC],
    ['surface-head', 'chamber-cc', 41, IRON_HEAD],
    ['thread-insert', 'surface-head', 43, IRON_HEAD],
  ])('%s comes before %s (rule %i)', (first, then, no, casting) => {
    expect(stops(casting, [[first], [then]], then)).toContain(no);
    expect(stops(casting, [[first, DONE], [then]], then)).not.toContain(no);
  });

  // Facts that must hold: [fact, operation, rule].
  it.each([
    ['tag-and-photos', 'disassemble-head', 1, IRON_HEAD],
    ['metal-confirmed', 'hot-tank', 3, IRON_HEAD],
    ['cam-fitted', 'lash-set', 23, DOHC],
    ['thickness-before', 'surface-head', 24, IRON_HEAD],
    ['plugs-out', 'gallery-brush', 26, BLOCK],
    ['fasteners-known', 'main-line-check', 28, BLOCK],
    ['piston-size', 'bore-cylinder', 30, BLOCK],
    ['caps-torqued', 'hone-cylinder', 44, BLOCK],
  ])('%s is wanted before %s (rule %i)', (fact, code, no, casting) => {
    expect(stops(casting, [[code]], code)).toContain(no);
    expect(stops(casting, [[code]], code, [fact])).not.toContain(no);
  });

  it('never lets boring start without a piston size, and nobody can let it pass (I26)', () => {
    const found = job(BLOCK, [['bore-cylinder']])
      .of('bore-cylinder')
      .find((r) => r.rule.no === 30);
    expect(found).toMatchObject({
      strength: 'hard',
      words: 'No piston size. Measure a piston or write the size asked for.',
    });
    expect(found?.rule.waiver).toBe('none');
  });

  it('asks a crack check before any metal is cut, only the customer may decline it', () => {
    const found = job(IRON_HEAD, [['seat-cut']])
      .of('seat-cut')
      .find((r) => r.rule.no === 5);
    expect(found).toMatchObject({ strength: 'hard', state: 'unmet', missing: [] });
    expect(found?.rule.waiver).toBe('customer_signature');
  });

  it('reverses seat and surface for a diesel, where valve recession is limited', () => {
    const diesel = { ...IRON_HEAD, fuel: 'diesel' };
    const both: Row[] = [['seat-cut'], ['surface-head']];
    const soft = (casting: RuleCasting, code: string) =>
      job(casting, both)
        .of(code)
        .filter((r) => r.rule.no === 17).length;
    expect([soft(IRON_HEAD, 'surface-head'), soft(IRON_HEAD, 'seat-cut')]).toEqual([1, 0]);
    expect([soft(diesel, 'surface-head'), soft(diesel, 'seat-cut')]).toEqual([0, 1]);
  });
});

describe('evaluateStep', () => {
  it('wants plug map and readings before a block is signed off', () => {
    const { input } = job(BLOCK, []);
    expect(evaluateStep(input, 'sign-off', 30918).map((r) => r.rule.no)).toEqual([36, 37]);
    const ready = { ...input, facts: new Set(['plug-map-complete', 'required-readings']) };
    expect(evaluateStep(ready, 'sign-off', 30918)).toEqual([]);
  });
});

describe('holds', () => {
  it('names an operation, a group or a gate', () => {
    const tank = kindOf('hot-tank');
    expect(
      ['hot-tank', 'caustic', 'gate:clean', 'magnet', 'gate:crack'].map((name) => holds(name, tank, GROUPS)),
    ).toEqual([true, true, true, false, false]);
  });
});

describe('applies', () => {
  it('matches every condition that is set', () => {
    const rule = RULES.find((r) => r.no === 11 && r.ifCamLayout === 'sohc');
    if (!rule) throw new Error('rule 11 is gone');
    expect(applies(rule, { ...DOHC, camLayout: 'sohc' })).toBe(true);
    expect(applies(rule, DOHC)).toBe(false);
  });
});
