import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitOf } from '#tests/kit/bench-facts.ts';
import { inch, sheet, type Typed, valveBench } from '#tests/kit/valve-bench.ts';

const guide = (typed: string, point: string): Typed => ['guide-id', typed, 'in', { point }];
const stem: Typed = ['stem', '0.3412', 'in'];
const rock = (swing: string, length: string, reach: string): Typed[] => [
  ['rock-swing', swing, 'in'],
  ['guide-length', length, 'in'],
  ['rock-reach', reach, 'in'],
];

describe('guide-clearance', () => {
  it('0.3438 less 0.3412 is 0.0026 in (exact arithmetic)', () => {
    expect(valveBench([guide('0.3438', 'mid'), stem]).value('guide-clearance')).toBe(inch('0.0026'));
  });

  it('is the worst of all three depths and both axes', () => {
    const bench = valveBench([
      guide('0.3441', 'top'),
      guide('0.3439', 'mid'),
      guide('0.3443', 'bot'),
      guide('0.3440', 'top-y'),
      guide('0.3439', 'mid-y'),
      guide('0.3446', 'bot-y'),
      stem,
    ]);

    expect(bench.known('guide-clearance')).toMatchObject({ value: inch('0.0034'), marks: [] });
    expect(bench.value('bell-mouth')).toBe(inch('0.0007'));
  });

  it('stands and is judged from whatever depths were read, and says which', () => {
    const limits = [limitOf('guide-clearance', 'in', { high: '0.0040' })];
    const bench = valveBench([guide('0.3438', 'mid'), stem], limits);

    expect(bench.known('guide-clearance')?.marks).toEqual(['guide read at the middle only']);
    expect(bench.verdict('guide-clearance')).toBe('pass');
  });

  it.each([
    ['TM 9-2815-255-24', '0.3467', 'pass'],
    ['TM 9-2815-255-24 (knurling is allowed to 0.008)', '0.3477', 'fail'],
  ])('%s: at most 0.006 in, guide %s on a stem of 0.3412: %s', (_, size, expected) => {
    const limits = [limitOf('guide-clearance', 'in', { high: '0.006' })];

    expect(valveBench([guide(size, 'bot'), stem], limits).verdict('guide-clearance')).toBe(expected);
  });

  it('is never a pass while guide or stem is missing (common practice, no source)', () => {
    const limits = [limitOf('guide-clearance', 'in', { high: '0.0040' })];

    expect(valveBench([guide('0.3438', 'mid')], limits).verdict('guide-clearance')).toBe('not measured');
    expect(valveBench([stem], limits).verdict('guide-clearance')).toBe('not measured');
  });
});

describe('rock-clearance', () => {
  // c = R / (1 + 2 e / L): the stem touches opposite ends of the guide both ways.
  it.each([
    ['0.008', '2.00', '1.00', 0.004, 1e-9],
    ['0.010', '2.00', '0.75', 0.005_714, 1e-6],
  ])('swing %s, guide %s, gauge %s beyond: %d in (exact mathematics)', (swing, length, reach, expected, within) => {
    const found = valveBench(rock(swing, length, reach)).value('rock-clearance') ?? Number.NaN;

    expect(Math.abs(found / 25_400_000 - expected)).toBeLessThanOrEqual(within);
  });

  it('is another way to the same clearance, and says so', () => {
    const limits = [limitOf('guide-clearance', 'in', { high: '0.0050' })];
    const bench = valveBench(rock('0.008', '2.00', '1.00'), limits);

    expect(bench.known('guide-clearance')).toMatchObject({
      value: inch('0.004'),
      marks: ['by rocking the stem in its guide'],
    });
    expect(bench.verdict('guide-clearance')).toBe('pass');
  });

  it('lets the bore readings stand where both were read, and says so', () => {
    const bench = valveBench([...rock('0.008', '2.00', '1.00'), guide('0.3438', 'mid'), stem]);

    expect(bench.known('guide-clearance')).toMatchObject({ value: inch('0.0026') });
    expect(bench.known('guide-clearance')?.marks).toContain('rocked too: the bore readings stand');
  });

  it('takes guide length and gauge place of the sheet, and wants them', () => {
    const swing: Typed = ['rock-swing', '0.008', 'in'];
    const limits = sheet(['guide-length', '2.00', 'in'], ['rock-reach', '1.00', 'in']);

    expect(valveBench([swing], limits).value('rock-clearance')).toBe(inch('0.004'));
    expect(valveBench([swing]).known('rock-clearance')).toMatchObject({ value: null });
    expect(valveBench([swing]).verdict('guide-clearance')).toBe('not measured');
  });

  it('is never more than the swing, and less the farther out the gauge stands (property)', () => {
    const size = fc.integer({ min: 1, max: 500 }).map((thou) => (thou / 1000).toFixed(3));

    fc.assert(
      fc.property(size, size, size, size, (swing, length, near, more) => {
        const at = (reach: string) => valveBench(rock(swing, length, reach)).value('rock-clearance') ?? 0;
        const far = (Number(near) + Number(more)).toFixed(3);

        expect(at(near)).toBeLessThanOrEqual(inch(swing));
        expect(at(far)).toBeLessThanOrEqual(at(near));
      }),
      { numRuns: 50 },
    );
  });
});

describe('stem-wear', () => {
  it('is the unworn part less the worn one; more than 0.0015 in is refused (common practice, no source)', () => {
    const limits = [limitOf('stem-wear', 'in', { high: '0.0015' })];
    const bench = valveBench([['stem-unworn', '0.3430', 'in'], stem], limits);

    expect(bench.value('stem-wear')).toBe(inch('0.0018'));
    expect(bench.verdict('stem-wear')).toBe('fail');
    expect(valveBench([stem], limits).verdict('stem-wear')).toBe('not measured');
  });
});
