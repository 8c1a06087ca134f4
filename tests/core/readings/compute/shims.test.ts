import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import {
  chooseShims,
  listShimChoices,
  listStacks,
  pickList,
  readStack,
  sizeText,
  stackText,
} from '#core/readings/compute/shims.ts';
import { loadAt, springOf } from '#core/readings/compute/spring.ts';
import { INCH_SHIMS, MM_SHIMS } from '#tests/kit/bench-facts.ts';

const inch = (text: string) => measureOf(text, 'in');
const spring = springOf(
  [
    { height: inch('1.700'), load: measureOf('110', 'lbf') },
    { height: inch('1.200'), load: measureOf('270', 'lbf') },
  ],
  false,
);
const task = (height: string) => ({
  height: inch(height),
  target: inch('1.700'),
  stock: INCH_SHIMS,
  ...(spring && { loadAt: (at: number) => loadAt(spring, at) }),
});

describe('chooseShims', () => {
  // Stock sizes and the rule for ties: common practice, no source. That a stack ends at about 1/16 in: TM 5-3810-289-34.
  it.each([
    ['1.686', 'none', '1.686'],
    ['1.703', 'none', '1.703'],
    ['1.712', '0.015', '1.697'],
    ['1.718', '0.015', '1.703'],
    ['1.731', '0.030', '1.701'],
    ['1.744', '0.015 + 0.030', '1.699'],
    ['1.752', '0.015 + 0.030', '1.707'],
    ['1.768', '0.060', '1.708'],
    ['1.775', '0.060', '1.715'],
  ])('target 1.700 in, read %s: %s makes %s (exact arithmetic over the stock)', (height, stack, made) => {
    const choice = chooseShims(task(height));

    expect(stackText(choice.stack.thicknesses, INCH_SHIMS)).toBe(stack);
    expect(choice.height).toBe(inch(made));
  });

  it('on equal error takes fewer shims, then the lower height', () => {
    expect(chooseShims(task('1.7075')).stack.thicknesses).toEqual([]);
    expect(chooseShims(task('1.7225')).height).toBe(inch('1.6925'));
  });

  it('on equal error and number takes the smaller error of the load', () => {
    const stiffBelow = springOf(
      [
        { height: inch('1.800'), load: measureOf('90', 'lbf') },
        { height: inch('1.700'), load: measureOf('110', 'lbf') },
        { height: inch('1.600'), load: measureOf('200', 'lbf') },
      ],
      true,
    );

    const choice = chooseShims({
      ...task('1.7225'),
      ...(stiffBelow && { loadAt: (at: number) => loadAt(stiffBelow, at) }),
    });

    expect(choice.height).toBe(inch('1.7075'));
  });

  it('works without a known spring', () => {
    expect(chooseShims({ height: inch('1.731'), target: inch('1.700'), stock: INCH_SHIMS }).loadError).toBeNull();
  });
});

describe('listStacks', () => {
  it('makes 0, 15, 30, 45 and 60 thou and nothing more', () => {
    const sums = new Set(listStacks(INCH_SHIMS).map((stack) => stack.sum));

    expect([...sums].toSorted((a, b) => a - b)).toEqual(['0', '0.015', '0.030', '0.045', '0.060'].map(inch));
  });

  it('so that no excess in range is ever off by more than 7.5 thou (exact arithmetic)', () => {
    fc.assert(
      fc.property(fc.integer({ min: -75, max: 675 }), (tenths) => {
        const choice = chooseShims({ ...task('1.700'), height: inch('1.700') + tenths * 2540 });

        expect(Math.abs(choice.error)).toBeLessThanOrEqual(inch('0.0075'));
      }),
    );
  });

  it('makes only no shim when the shop has none', () => {
    expect(listStacks({ unit: 'in', thicknesses: [], maxStack: 0 })).toEqual([{ thicknesses: [], sum: 0 }]);
  });
});

describe('listShimChoices', () => {
  it('is never beaten by trying every stack by brute force (property)', () => {
    const size = fc.integer({ min: 50, max: 1500 }).map((hundredths) => hundredths * 1000);

    fc.assert(
      fc.property(
        fc.uniqueArray(size, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 30_000_000, max: 33_000_000 }),
        fc.integer({ min: 0, max: 1_500_000 }),
        (sizes, height, maxStack) => {
          const stock = {
            unit: 'mm' as const,
            thicknesses: sizes.map((thickness) => ({ thickness, text: String(thickness) })),
            maxStack,
          };
          const target = 30_500_000;
          const sums = new Set<number>([0]);
          for (const start of sums) {
            for (const more of sizes) if (start + more <= maxStack) sums.add(start + more);
          }
          const least = Math.min(...[...sums].map((sum) => Math.abs(height - sum - target)));

          expect(Math.abs(chooseShims({ height, target, stock }).error)).toBe(least);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('gives every candidate with what it would make, best first', () => {
    const choices = listShimChoices(task('1.731'));

    expect(choices.map((it) => Math.abs(it.error))).toEqual(
      choices.map((it) => Math.abs(it.error)).toSorted((a, b) => a - b),
    );
    expect(choices.length).toBeGreaterThanOrEqual(5);
  });
});

describe('readStack', () => {
  it.each([
    ['none', []],
    ['0.015', ['0.015']],
    ['.015 + .030', ['0.015', '0.030']],
    ['0.030+0.015', ['0.015', '0.030']],
    ['2 x 0.015', ['0.015', '0.015']],
    ['0.030 in', ['0.030']],
  ])('reads %s', (text, expected) => {
    expect(readStack(text, [INCH_SHIMS, MM_SHIMS])).toEqual(expected.map(inch));
  });

  it('reads metric sizes as the shop writes them', () => {
    expect(readStack('0.5+1', [INCH_SHIMS, MM_SHIMS])).toEqual([500_000, 1_000_000]);
    expect(readStack('0,25', [INCH_SHIMS, MM_SHIMS])).toEqual([250_000]);
  });

  it.each(['0.020', 'two', '', '0.015 mm', '0.015+0.5'])('knows no %s', (text) => {
    expect(readStack(text, [INCH_SHIMS, MM_SHIMS])).toBeNull();
  });
});

describe('pickList', () => {
  it('counts each size over the whole head, thinnest first', () => {
    const picked = pickList([[inch('0.015')], [inch('0.015'), inch('0.030')], []], INCH_SHIMS);

    expect(picked.map(({ text, count }) => `${count} x ${text}`)).toEqual(['2 x 0.015', '1 x 0.030']);
    expect(sizeText(inch('0.020'), INCH_SHIMS)).toBe('0.02');
  });
});
