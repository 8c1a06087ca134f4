import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  markOfUnit,
  otherDecimals,
  showBoth,
  showExact,
  showTyped,
  showValue,
  typedDecimals,
  withMark,
} from '#core/kernel/measure-show.ts';
import { measureOf } from '#core/kernel/measure-units.ts';

describe('showValue', () => {
  it.each([
    // Exact factors: NIST SP 811 App. B. Printed figures of the manuals where named.
    ['NIST SP 811, exact', '1.000', 'in', 'mm', 4, '25.4000'],
    ['NIST SP 811, exact', '30', 'uin', 'um', 4, '0.7620'],
    ['NIST SP 811, exact', '0.8', 'um', 'uin', 3, '31.496'],
    ['NIST SP 811, exact', '50', 'uin', 'um', 2, '1.27'],
    ['NIST SP 811, recalled', '110', 'lbf', 'N', 2, '489.30'],
    ['TM 5-1940-322-24, WP 0160 prints 359', '80.7', 'lbf', 'N', 0, '359'],
    ['TM 5-1940-322-24, WP 0160 prints 397', '89.2', 'lbf', 'N', 0, '397'],
    ['TM 5-1940-322-24, WP 0160 prints 49.25', '1.94', 'in', 'mm', 3, '49.276'],
    ['NIST SP 811, recalled', '320', 'lbf/in', 'N/mm', 4, '56.0406'],
    ['TM 5-3895-359-14&P prints 276', '40', 'psi', 'kPa', 0, '276'],
    ['NIST SP 811, recalled', '25', 'inHg', 'kPa', 2, '84.66'],
    ['NIST SP 811, recalled', '65', 'lbf.ft', 'N.m', 4, '88.1282'],
    ['TM 55-1930-208-24 prints 224', '165', 'lbf.ft', 'N.m', 0, '224'],
    ['NIST SP 811, exact', '1', 'in3', 'cc', 6, '16.387064'],
    ['TM 5-3895-359-14&P prints 82', '180', 'degF', 'degC', 0, '82'],
    ['TM 5-3895-359-14&P prints 93', '200', 'degF', 'degC', 0, '93'],
    ['NIOSH 94-110 rev. 2021 prints 23', '51', 'lb', 'kg', 0, '23'],
    ['TM 5-2815-241-34&P misprints 188.713', '6.5635', 'in', 'mm', 3, '166.713'],
    ['TM 9-2815-255-24 misprints 0.015', '0.006', 'in', 'mm', 4, '0.1524'],
  ] as const)('%s: %s %s in %s', (_, text, from, to, places, expected) => {
    expect(showValue(measureOf(text, from), to, places)).toBe(expected);
  });

  it('rounds once, half away from zero', () => {
    expect(showValue(25_400, 'in', 3)).toBe('0.001');
    expect(showValue(12_700, 'in', 3)).toBe('0.001');
    expect(showValue(-12_700, 'in', 3)).toBe('\u22120.001');
    expect(showValue(12_699, 'in', 3)).toBe('0.000');
  });

  it('dresses signs, bare inches and a decimal comma', () => {
    expect(showValue(measureOf('0.0058', 'in'), 'in', 4, { bareInch: true })).toBe('.0058');
    expect(showValue(measureOf('1.0058', 'in'), 'in', 4, { bareInch: true })).toBe('1.0058');
    expect(showValue(measureOf('0.58', 'mm'), 'mm', 2, { bareInch: true, point: ',' })).toBe('0,58');
    expect(showValue(measureOf('0.003', 'in'), 'in', 3, { sign: true })).toBe('+0.003');
    expect(showValue(0, 'in', 3, { sign: true })).toBe('0.000');
  });
});

describe('showTyped', () => {
  it.each([
    ['1.700', '1.700'],
    ['0,775', '0.775'],
    ['1.701"', '1.701'],
    ['30 thou', '0.030'],
    ['3 31/32', '3 31/32'],
    ['5/16 in', '5/16'],
  ])('shows %s as %s', (typed, expected) => {
    const value = { '1.700': '1.7', '0,775': '0.775', '1.701"': '1.701', '30 thou': '0.03', '3 31/32': '3.96875' }[
      typed
    ];

    expect(showTyped(typed, measureOf(value ?? '0.3125', 'in'), 'in')).toBe(expected);
  });

  it('counts decimals as typed', () => {
    expect(typedDecimals('1.700')).toBe(3);
    expect(typedDecimals('2-1/32')).toBe(5);
    expect(typedDecimals('30')).toBe(0);
  });
});

describe('showBoth', () => {
  it('sets the chosen unit first and the other one from the exact value', () => {
    expect(showBoth(measureOf('3.9700', 'in'), 'in', 4)).toEqual({ first: '3.9700 in', second: '100.838 mm' });
    expect(showBoth(measureOf('35.50', 'mm'), 'mm', 2)).toEqual({ first: '35.50 mm', second: '1.398 in' });
    expect(showBoth(measureOf('62.0', 'cc'), 'cc', 1)).toEqual({ first: '62.0 cc', second: null });
  });

  it('shows the other unit about as finely', () => {
    expect(otherDecimals('in', 4)).toBe(3);
    expect(otherDecimals('mm', 2)).toBe(3);
    expect(otherDecimals('lbf', 1)).toBe(0);
    expect(otherDecimals('cc', 1)).toBe(1);
  });
});

describe('showExact', () => {
  it('shows as few decimals as say it whole', () => {
    expect(showExact(measureOf('1.5101', 'in'), 'in', 3)).toBe('1.5101');
    expect(showExact(measureOf('1.51', 'in'), 'in', 3)).toBe('1.510');
    expect(showExact(measureOf('0.5', 'mm'), 'mm', 1)).toBe('0.5');
  });
});

describe('withMark', () => {
  it('puts a space before a unit, none before a degree, nothing for a count', () => {
    expect(withMark('1.700', 'in')).toBe('1.700 in');
    expect(withMark('45.0', 'deg')).toBe('45.0°');
    expect(withMark('8', 'count')).toBe('8');
    expect(markOfUnit('uin')).toBe('µin');
    expect(markOfUnit('teeth')).toBe('teeth');
  });
});

describe('for any length', () => {
  it('millimetres with six decimals hold an inch figure of five without loss', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (steps) => {
        const value = steps * 254;
        const text = showValue(value, 'mm', 6);

        expect(measureOf(text, 'mm')).toBe(value);
        expect(showValue(measureOf(text, 'mm'), 'in', 5)).toBe(showValue(value, 'in', 5));
      }),
    );
  });
});
