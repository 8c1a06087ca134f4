import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coupling,
  frequency,
  horizontal,
  liftLimit,
  travel,
  twist,
  vertical,
  weightLimit,
} from '#core/readings/compute/geometry/lifting.ts';
import reference from '#tests/reference/lifting.json' with { type: 'json' };

const cm = (figure: number) => Math.round(figure * 10_000_000);
const degrees = (figure: number) => Math.round(figure * 1_000_000);
const inches = (figure: number) => Math.round(figure * 25_400_000);

type Case = (typeof reference.cases)[number];
type Inputs = Readonly<{ H: number; V: number; D: number; A: number; FM: number; CM: number }>;
const described = reference.cases.flatMap((it: Case) =>
  'inputs_cm' in it ? [{ ...it, inputs: it.inputs_cm as Inputs, kg: it.expected_RWL_kg ?? Number.NaN }] : [],
);
const limitOf = ({ H, V, D, A, FM, CM }: Inputs) =>
  liftLimit({ h: cm(H), v: cm(V), d: cm(D), a: degrees(A), frequency: FM, coupling: CM }) / 1000;

const MULTIPLIERS: Readonly<Record<string, (figure: number) => number>> = {
  HM: (figure) => horizontal(cm(figure)),
  VM: (figure) => vertical(cm(figure)),
  DM: (figure) => travel(cm(figure)),
  AM: (figure) => twist(degrees(figure)),
};

describe('liftLimit', () => {
  it.each(described)('$id: $kg kg ($source)', (it) => {
    // Whole grams: half of one is the most that rounding takes.
    expect(Math.abs(limitOf(it.inputs) - it.kg)).toBeLessThanOrEqual(Math.max(it.tolerance, 0.0005));
  });

  it('H 25, V 75, D 25, no twist: exactly 23 kg (NIOSH 94-110, rev. 9/2021, p. 7)', () => {
    expect(limitOf({ H: 25, V: 75, D: 25, A: 0, FM: 1, CM: 1 })).toBe(23);
  });

  it('H 40, V 60, D 60, A 30, fair grip: 10.552 kg, index 2.464 for 26 kg (NIOSH 94-110, formula)', () => {
    const limit = limitOf({ H: 40, V: 60, D: 60, A: 30, FM: 1, CM: 0.95 });

    expect(Math.abs(limit - 10.552)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(26 / limit - 2.464)).toBeLessThanOrEqual(0.01);
  });

  it('bench to bench, H 35, V 75, D 30, poor grip: 14.34 kg, index 0.84 for 12 kg (NIOSH 94-110, formula)', () => {
    const limit = limitOf({ H: 35, V: 75, D: 30, A: 0, FM: 1, CM: 0.9 });

    expect(limit).toBeCloseTo(14.34, 2);
    expect(12 / limit).toBeCloseTo(0.84, 2);
  });

  it('farther, more twist or a longer way never allows more (property of the equation)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 63 }),
        fc.integer({ min: 0, max: 175 }),
        fc.integer({ min: 10, max: 175 }),
        fc.integer({ min: 0, max: 134 }),
        (H, V, D, A) => {
          const at = { H, V, D, A, FM: 1, CM: 1 };

          expect(limitOf({ ...at, H: H + 1 })).toBeLessThanOrEqual(limitOf(at));
          expect(limitOf({ ...at, D: D + 1 })).toBeLessThanOrEqual(limitOf(at));
          expect(limitOf({ ...at, A: A + 1 })).toBeLessThanOrEqual(limitOf(at));
          expect(limitOf(at)).toBeLessThanOrEqual(23);
        },
      ),
    );
  });
});

describe('horizontal, vertical, travel, twist', () => {
  it.each(reference.multiplier_table_cases)(
    '$multiplier at $input $value: $printed (Canadian Centre for Occupational Health and Safety, Calculating RWL)',
    (it) => {
      const figure = MULTIPLIERS[it.multiplier]?.(it.value) ?? Number.NaN;

      expect(Math.round(figure * 100 + 1e-9) / 100).toBe(it.printed);
    },
  );

  it.each(reference.table_exceptions)(
    'table $table prints $printed where the formula gives $formula: the formula counts',
    (it) => {
      const figure = 'H_in' in it && it.H_in !== undefined ? 10 / it.H_in : travel(cm(Number(it.D_cm)));

      expect(figure).toBeCloseTo(it.formula, 4);
      expect(Math.round(figure * 100) / 100).not.toBe(it.printed);
      if (it.H_in !== undefined) expect(horizontal(inches(it.H_in))).toBeCloseTo(25 / (it.H_in * 2.54), 9);
    },
  );

  it('substitutions and ends of the manual: 25 cm for less, nothing beyond 63, 175, 175 cm and 135 degrees', () => {
    const { H_min_cm, H_max_cm, V_max_cm, D_min_cm, D_max_cm, A_max_deg } = reference.rules;

    expect([horizontal(cm(1)), horizontal(cm(H_min_cm))]).toEqual([1, 1]);
    expect([travel(cm(1)), travel(cm(D_min_cm))]).toEqual([1, 1]);
    for (const [multiplier, end] of [
      ['HM', H_max_cm],
      ['VM', V_max_cm],
      ['DM', D_max_cm],
      ['AM', A_max_deg],
    ] as const) {
      expect(MULTIPLIERS[multiplier]?.(end)).toBeGreaterThan(0);
      expect(MULTIPLIERS[multiplier]?.(end + 0.001)).toBe(0);
    }
  });

  it('a twist counts the same to either side', () => {
    expect(twist(degrees(-45))).toBe(twist(degrees(45)));
  });
});

describe('weightLimit', () => {
  const worked = reference.cases.flatMap((it: Case) =>
    'printed_multipliers' in it && it.printed_multipliers ? [{ ...it, printed: it.printed_multipliers }] : [],
  );

  it.each(worked)('$id: the product of the printed multipliers, and the index ($source)', (it) => {
    const { HM, VM, DM, AM, FM, CM } = it.printed;
    const constant = it.printed.LC_kg ?? it.printed.LC_lb ?? 0;
    const limit = weightLimit(constant, [HM, VM, DM, AM, FM, CM]);
    const [wanted, load] = [it.expected_RWL_kg ?? it.expected_RWL_lb ?? 0, it.load_kg ?? it.load_lb ?? 0];

    expect(Math.abs(limit - wanted)).toBeLessThanOrEqual(it.tolerance);
    // The sources divide by the limit as they print it.
    expect(Math.abs(load / (Math.round(limit * 100) / 100) - (it.expected_LI ?? 0))).toBeLessThanOrEqual(it.tolerance);
  });
});

describe('coupling', () => {
  it('good 1.00, fair 0.95 under 75 cm and 1.00 from there, poor 0.90 (NIOSH 94-110)', () => {
    const at = (v: number) => [coupling('good', cm(v)), coupling('fair', cm(v)), coupling('poor', cm(v))];

    expect(at(74)).toEqual([1, 0.95, 0.9]);
    expect(at(75)).toEqual([1, 1, 0.9]);
  });
});

describe('frequency', () => {
  it.each(reference.FM_up_to_1_hour)(
    '$lifts_per_min a minute for up to an hour, at or above 75 cm: $FM (a public program)',
    (it) => {
      expect(frequency(it.lifts_per_min * 15, 'up to 1 hour', cm(75))).toBe(it.FM);
    },
  );

  it('10 lifts a minute for a shift, at or above 75 cm: 0.13 (Canadian Centre for Occupational Health and Safety, example)', () => {
    expect(frequency(150, '2 to 8 hours', cm(75))).toBe(0.13);
    expect(frequency(150, '2 to 8 hours', cm(74))).toBe(0);
  });

  it('between two rows the more frequent counts; above 15 a minute nobody lifts; low lifts end earlier (from memory)', () => {
    expect(frequency(10 * 8, 'up to 1 hour', cm(80))).toBe(0.75);
    expect(frequency(226, 'up to 1 hour', cm(80))).toBe(0);
    expect([frequency(180, 'up to 1 hour', cm(74)), frequency(195, 'up to 1 hour', cm(74))]).toEqual([0.37, 0]);
    expect([frequency(150, '1 to 2 hours', cm(74)), frequency(165, '1 to 2 hours', cm(74))]).toEqual([0.26, 0]);
    expect(frequency(195, '1 to 2 hours', cm(80))).toBe(0);
  });

  it('more often or for longer never allows more (property of the table)', () => {
    const spans = ['up to 1 hour', '1 to 2 hours', '2 to 8 hours'] as const;

    for (let lifts = 0; lifts < 230; lifts += 1) {
      for (const span of spans)
        expect(frequency(lifts + 1, span, cm(80))).toBeLessThanOrEqual(frequency(lifts, span, cm(80)));
      expect(frequency(lifts, spans[1], cm(80))).toBeLessThanOrEqual(frequency(lifts, spans[0], cm(80)));
      expect(frequency(lifts, spans[2], cm(80))).toBeLessThanOrEqual(frequency(lifts, spans[1], cm(80)));
    }
  });
});
