import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Facts, Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { inch, knownAt, placesOf } from '#tests/kit/worn-block.ts';

const MAINS = placesOf('main', 5);
const CAMS = placesOf('cam_journal', 4, 20);
const block = (words: Partial<Facts> = {}): Facts => factsOf({ spots: [...MAINS, ...CAMS], ...words });
const mainOf = (label: string) => MAINS.find((it) => it.label === label) as Spot;

const round = (spot: Spot, sizes: readonly string[]): Reading[] =>
  ['0', '+60', '-60'].flatMap((point, index) => {
    const typed = sizes[index];
    return typed ? [readingOf('main-size', typed, 'in', { spot: spot.id, point, stage: 'before' })] : [];
  });
/** Heights along the bar, one for each main from the front; an empty text is not read. */
const heights = (typed: readonly string[], quantity = 'main-height', spots: readonly Spot[] = MAINS): Reading[] =>
  spots.flatMap((spot, index) => {
    const text = typed[index] ?? '';
    return text === '' ? [] : [readingOf(quantity, text, 'in', { spot: spot.id, stage: 'before' })];
  });
const one = mainOf('1');
const before = { spot: one, stage: 'before' } as const;

describe('roundness of mains', () => {
  it('is the greatest less the smallest of three (exact mathematics)', () => {
    const facts = block({ readings: round(one, ['2.8410', '2.8407', '2.8409']) });

    expect(knownAt(facts, 'main-out-of-round', before)?.value).toBe(inch('0.0003'));
  });

  it('the vertical reading may not be the largest (exam-style web text, weak source)', () => {
    const limits = [limitOf('main-vertical', 'in', { high: '0', stage: 'before' })];
    const verdict = (...sizes: string[]) => {
      const bench = openBench(block({ limits, readings: round(one, sizes) }));
      const known = bench.known('main-vertical', one, null, 'before');
      return [known?.value ?? null, bench.verdict('main-vertical', 'before', null, known).name];
    };

    expect(verdict('2.8410', '2.8407', '2.8409')).toEqual([inch('0.0001'), 'fail']);
    expect(verdict('2.8408', '2.8407', '2.8409')).toEqual([inch('-0.0001'), 'pass']);
    expect(verdict('2.8409', '2.8409', '2.8409')).toEqual([0, 'pass']);
    expect(verdict('2.8410', '2.8407')).toEqual([null, 'not measured']);
  });

  it('a size at the limit of the band passes: 3.812 to 3.813 in (TM 55-1930-208-24)', () => {
    const limits = [limitOf('main-size', 'in', { low: '3.812', high: '3.813', stage: 'before' })];
    const verdict = (typed: string) => {
      const bench = openBench(block({ limits, readings: round(one, [typed]) }));
      return bench.verdict('main-size', 'before', null, bench.known('main-size', one, '0', 'before'));
    };

    expect(verdict('3.8130').name).toBe('pass');
    expect(verdict('3.8131')).toMatchObject({ name: 'fail', direction: 'over' });
    expect(verdict('3.8119')).toMatchObject({ name: 'fail', direction: 'under' });
  });
});

describe('line of the mains', () => {
  it('one main 0.001 high of a straight line is 0.001 out (exact mathematics)', () => {
    const facts = block({ readings: heights(['0.0', '0.0', '0.001', '0.0', '0.0']) });

    expect(knownAt(facts, 'line-error', { stage: 'before' })).toMatchObject({
      value: inch('0.001'),
      marks: ['places taken as evenly spaced'],
    });
    expect(MAINS.map((spot) => knownAt(facts, 'main-line', { spot, stage: 'before' })?.value)).toEqual([
      0,
      0,
      inch('0.001'),
      0,
      0,
    ]);
    expect(MAINS.map((spot) => knownAt(facts, 'main-step', { spot, stage: 'before' })?.value)).toEqual([
      0,
      inch('0.001'),
      inch('0.001'),
      inch('0.001'),
      0,
    ]);
  });

  it('a bar that was laid aslant changes nothing (property)', () => {
    const tenths = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 5, maxLength: 5 });
    const text = (it: number) => (it / 10_000).toFixed(4);

    fc.assert(
      fc.property(tenths, fc.integer({ min: -15, max: 15 }), (them, slope) => {
        const level = block({ readings: heights(them.map(text)) });
        const aslant = block({ readings: heights(them.map((it, index) => text(it + slope * index))) });
        const front = block({ readings: heights(them.toReversed().map(text)) });

        expect(knownAt(aslant, 'line-error', { stage: 'before' })?.value).toBe(
          knownAt(level, 'line-error', { stage: 'before' })?.value,
        );
        expect(knownAt(front, 'line-error', { stage: 'before' })?.value).toBe(
          knownAt(level, 'line-error', { stage: 'before' })?.value,
        );
      }),
      { numRuns: 25 },
    );
  });

  it('goes by the places of the mains where all were typed (exact mathematics)', () => {
    const places = heights(['0.0', '4.0', '8.0', '12.0', '20.0'], 'main-place');
    const facts = block({ readings: [...heights(['0.0', '0.0', '0.0', '0.0', '0.010']), ...places] });

    // The line of the ends rises by 0.010 in 20 in: main 4 at 12 in lies 0.006 below it.
    expect(knownAt(facts, 'main-line', { spot: mainOf('4'), stage: 'before' })).toMatchObject({
      value: inch('-0.006'),
      marks: [],
    });
  });

  it('a main that was not read is missed, unless the line is past its limit already', () => {
    const limits = [limitOf('line-error', 'in', { high: '0.002', stage: 'before' })];
    const error = (...typed: string[]) =>
      knownAt(block({ limits, readings: heights(typed) }), 'line-error', { stage: 'before' });

    expect(error('0.0', '', '0.001', '0.0', '0.0')).toMatchObject({ value: null, marks: ['not measured: 2'] });
    expect(error('0.0', '', '0.003', '0.0', '0.0')?.value).toBe(inch('0.003'));
    expect(error()).toBeNull();
    expect(
      knownAt(block({ readings: heights(['0.0', '0.0', '0.001', '0.0', '']) }), 'main-line', before)?.value,
    ).toBeNull();
  });

  it('a line that was typed stands instead', () => {
    const typed = readingOf('line-error', '0.0015', 'in', { stage: 'before' });

    expect(knownAt(block({ readings: [typed] }), 'line-error', { stage: 'before' })?.value).toBe(inch('0.0015'));
  });

  it('the cam tunnel is judged alike (exact mathematics)', () => {
    const facts = block({ readings: heights(['0.0', '0.002', '0.0', '0.0'], 'cam-height', CAMS) });

    expect(knownAt(facts, 'cam-tunnel-error', { stage: 'before' })?.value).toBe(inch('0.002'));
    expect(knownAt(facts, 'cam-tunnel-line', { spot: CAMS[1] as Spot, stage: 'before' })?.value).toBe(inch('0.002'));
  });
});

describe('line hone', () => {
  const cut = (typed: readonly string[]) => heights(typed, 'cap-cut');

  it('0.004 off the caps raises the centre line by 0.002 in (exact mathematics)', () => {
    const facts = block({ readings: cut(Array(5).fill('0.004')) });
    const rise = knownAt(facts, 'centre-line-rise', { stage: 'after' });

    expect(rise?.value).toBe(inch('0.002'));
    expect(rise?.marks).toEqual([
      'deck height is less by .0020 in: pistons stand higher',
      'crank and cam are nearer by .0020 in: look at the timing chain or gears',
    ]);
    expect(knownAt(facts, 'main-rise', { spot: one, stage: 'before' })?.value).toBe(inch('0.002'));
  });

  it('says when the caps were not cut alike', () => {
    const rise = knownAt(block({ readings: cut(['0.004', '0.002']) }), 'centre-line-rise');

    expect(rise?.value).toBe(inch('0.002'));
    expect(rise?.marks.at(-1)).toBe('caps not cut alike: from .0010 in');
  });

  it('is nothing where no cap was cut', () => {
    expect(knownAt(block(), 'centre-line-rise')).toBeNull();
  });
});
