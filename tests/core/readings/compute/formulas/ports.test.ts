import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { ports, sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const LIMIT = [limitOf('port-vacuum-fall', 'inHg', { high: '5' })];
const spots = ports('1I', '1E');
const test = (start: string, end: string, ...more: readonly Typed[]): Typed[] => [
  ['port-vacuum-start', start, 'inHg'],
  ['port-vacuum-end', end, 'inHg'],
  ...more,
];
const at = (typed: readonly Typed[], limits = LIMIT) => valveBench(typed, limits, { spots });
const close = (value: number | null, expected: number, within: number) =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(within);

describe('port-vacuum-fall', () => {
  it.each([
    ['25', '24', '1', 'pass'],
    ['25', '20', '5', 'pass'],
    ['25', '14', '11', 'fail'],
  ])(
    '%s to %s inHg in ten seconds falls %s: %s (at most 5, common practice, no source)',
    (start, end, fall, expected) => {
      const bench = at(test(start, end));

      close(bench.value('port-vacuum-fall'), measureOf(fall, 'inHg'), 2);
      expect(bench.verdict('port-vacuum-fall')).toBe(expected);
    },
  );

  it.each([
    ['20', '22', '1.5'],
    ['5', '21', '8'],
  ])('over %s s to %s inHg it is reckoned over ten: %s (exact arithmetic)', (seconds, end, fall) => {
    const bench = at(test('25', end, ['port-vacuum-seconds', seconds, 's']));

    close(bench.value('port-vacuum-fall'), measureOf(fall, 'inHg'), 2);
    expect(bench.known('port-vacuum-fall')?.marks).toContain(`read over ${seconds} s, reckoned over 10`);
  });

  it('is not measured while one end is missing, never a pass', () => {
    expect(at(test('25', '24').slice(0, 1)).verdict('port-vacuum-fall')).toBe('not measured');
    expect(at(test('25', '24').slice(1)).verdict('port-vacuum-fall')).toBe('not measured');
    expect(at(test('25', '24', ['port-vacuum-seconds', '0', 's'])).verdict('port-vacuum-fall')).toBe('not measured');
  });

  it('says what a good figure does not prove: oiled seats, a low start', () => {
    const marks = at(test('18', '17', ['port-vacuum-how', 'oiled', null])).known('port-vacuum-fall')?.marks;

    expect(marks).toEqual(['seats oiled: proves nothing, repeat dry', 'started low: pull to about 25 inHg']);
  });

  it.each([
    ['24', 'holds with the guide blocked: guide or seal leaks'],
    ['12', 'leaks with the guide blocked: the seat'],
  ])('repeated with the guide blocked, ending at %s: %s (common practice, no source)', (end, expected) => {
    const blocked: Typed[] = [
      ['port-blocked-start', '25', 'inHg'],
      ['port-blocked-end', end, 'inHg'],
    ];

    expect(at(test('25', '14', ...blocked)).known('port-vacuum-fall')?.marks).toContain(expected);
    expect(at(test('25', '24', ...blocked)).known('port-vacuum-fall')?.marks).toEqual([]);
  });
});

describe('port-leak', () => {
  it('0.35 L losing 5 inHg in 10 s leaks 0.351 L of free air a minute (exact mathematics)', () => {
    const leak = at(test('25', '20', ['port-volume', '350', 'cc'])).value('port-leak');

    close(leak, measureOf('351', 'cc'), measureOf('2', 'cc'));
  });

  it('counts by the air pressure of the day, and says when it is the standard one', () => {
    const limits = sheet(['port-volume', '350', 'cc']);
    const low: Typed = ['local-pressure', '25', 'inHg', { spot: null }];

    close(at(test('20', '15', low), limits).value('port-leak'), measureOf('420', 'cc'), measureOf('0.01', 'cc'));
    expect(at(test('20', '15'), limits).known('port-leak')?.marks).toContain('at standard air pressure');
    expect(at(test('20', '15')).value('port-leak')).toBeNull();
  });
});
