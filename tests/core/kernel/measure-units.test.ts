import { describe, expect, it } from 'vitest';
import {
  decimal,
  FAMILIES,
  fromBaseExactly,
  isUnitCode,
  measureOf,
  otherUnit,
  systemOf,
  toBase,
  toBaseExactly,
  UNIT_CODES,
  type UnitCode,
  unitShape,
  unitsOf,
  usualUnit,
} from '#core/kernel/measure-units.ts';
import reference from '#tests/reference/units.json' with { type: 'json' };

/** Names of the reference table in our codes; rows of units that no bench types are not ours. */
const OURS: Readonly<Record<string, UnitCode>> = {
  in: 'in',
  mm: 'mm',
  microinch: 'uin',
  um: 'um',
  lbf: 'lbf',
  N: 'N',
  'lbf/in': 'lbf/in',
  'N/mm': 'N/mm',
  psi: 'psi',
  kPa: 'kPa',
  bar: 'bar',
  inHg: 'inHg',
  'ft lbf': 'lbf.ft',
  'in lbf': 'lbf.in',
  'N m': 'N.m',
  'in^3': 'in3',
  'cm^3': 'cc',
  lb: 'lb',
  kg: 'kg',
};
const cases = reference.cases.flatMap(({ from, to, gnu_units, stated }) => {
  const [a, b] = [OURS[from], OURS[to]];
  return a && b && unitShape(a).family === unitShape(b).family ? [{ from, to, a, b, factor: gnu_units, stated }] : [];
});

/** `figure` of unit `a`, in unit `b`, as a fraction of big integers. */
function convert(figure: string, a: UnitCode, b: UnitCode) {
  const one = toBaseExactly({ over: 1n, under: 1n }, b);
  const base = toBaseExactly(decimal(figure), a);
  return { over: base.over * one.under, under: base.under * one.over };
}

describe('unit factors', () => {
  it('covers at least a dozen rows of the table', () => {
    expect(cases.length).toBeGreaterThanOrEqual(12);
  });

  it.each(cases)('NIST SP 811 App. B.8 and GNU units: $from to $to is $factor', ({ a, b, factor, stated }) => {
    const ours = convert('1', a, b);
    const theirs = decimal(factor);

    const apart = ours.over * theirs.under - theirs.over * ours.under;
    const scale = theirs.over * ours.under;
    const size = apart < 0n ? -apart : apart;
    if (stated === 'exact') expect(apart).toBe(0n);
    else expect(size * 1_000_000_000n <= scale).toBe(true);
  });

  it.each(reference.temperature_cases)('exact by definition: $from F is $degC C', ({ from, degC }) => {
    const thousandths = toBase(decimal(String(from)), 'degF');

    expect(thousandths).toBe(Math.round(degC * 1000));
  });

  it('keeps a pressure difference of inHg as kilopascals (NIST SP 811 App. B.8: 25 inHg is 84.660 kPa)', () => {
    const { over, under } = convert('25', 'inHg', 'kPa');

    expect(Number((over * 1000n) / under) / 1000).toBeCloseTo(84.66, 2);
  });
});

describe('UNIT_CODES', () => {
  it('gives every family of figures at least one unit, and words none', () => {
    const without = FAMILIES.filter((family) => unitsOf(family).length === 0);

    expect(without).toEqual(['choice', 'text']);
    expect(UNIT_CODES.every(isUnitCode)).toBe(true);
    expect(isUnitCode('toString')).toBe(false);
  });

  it('pairs inch and metric both ways', () => {
    expect(otherUnit('in')).toBe('mm');
    expect(otherUnit('mm')).toBe('in');
    expect(otherUnit('cc')).toBeNull();
    expect(usualUnit('force', 'metric')).toBe('N');
    expect(usualUnit('choice', 'inch')).toBeNull();
    expect(systemOf('psi')).toBe('inch');
    expect(systemOf('kPa')).toBe('metric');
  });
});

describe('measureOf', () => {
  it('reads figures of code and data exactly', () => {
    expect(measureOf('1.700', 'in')).toBe(43_180_000);
    expect(measureOf('-0.20', 'mm')).toBe(-200_000);
    expect(fromBaseExactly(43_180_000, 'in')).toEqual({ over: 43_180_000n, under: 25_400_000n });
  });

  it('refuses what is no decimal figure', () => {
    expect(() => measureOf('1,7', 'in')).toThrow(RangeError);
    expect(() => measureOf('', 'in')).toThrow(RangeError);
    expect(() => measureOf('.', 'in')).toThrow(RangeError);
  });
});
