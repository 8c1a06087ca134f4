import { describe, expect, it } from 'vitest';
import { findQuantity } from '#core/catalogue/compute/quantities.ts';
import { openBench } from '#core/readings/compute/bench.ts';
import type { Limit, Reading, Spot } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { placesOf } from '#tests/kit/worn-block.ts';

const SPOTS: Readonly<Record<string, readonly Spot[]>> = {
  cylinder: placesOf('cylinder', 3, 1),
  main: placesOf('main', 4, 11),
  journal: placesOf('journal', 1, 21),
  rod: placesOf('rod', 1, 31),
  cam_journal: placesOf('cam_journal', 4, 41),
};
const ALL = Object.values(SPOTS).flat();

const SIX = ['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'];
const THREE = ['0', '+60', '-60'];
const FOUR = ['front', 'rear', 'left', 'right'];
const CORNERS = ['front-x', 'front-y', 'rear-x', 'rear-y'];

/** A quantity, what it is read from and at which points; null: once at each place of the kind. */
const CASES: readonly (readonly [quantity: string, from: string, points: readonly string[] | null, size: string])[] = [
  ['bore-taper', 'bore', SIX, '3.9500'],
  ['bore-out-of-round', 'bore', SIX, '3.9500'],
  ['bore-wear', 'bore', SIX, '3.9500'],
  ['bore-largest', 'bore', SIX, '3.9500'],
  ['bore-error', 'bore', SIX, '3.9500'],
  ['ring-growth', 'bore', SIX, '3.9500'],
  ['counterbore-ledge', 'ledge-place', FOUR, '0.3510'],
  ['ledge-level', 'ledge-place', FOUR, '0.3510'],
  ['liner-protrusion', 'liner-place', FOUR, '0.0040'],
  ['liner-level', 'liner-place', FOUR, '0.0040'],
  ['liner-spread', 'liner-protrusion', null, '0.0040'],
  ['main-out-of-round', 'main-size', THREE, '2.8410'],
  ['main-vertical', 'main-size', THREE, '2.8410'],
  ['line-error', 'main-height', null, '0.0010'],
  ['main-line', 'main-height', null, '0.0010'],
  ['main-step', 'main-height', null, '0.0010'],
  ['cam-tunnel-error', 'cam-height', null, '0.0010'],
  ['journal-size', 'journal-place', CORNERS, '2.6480'],
  ['journal-taper', 'journal-place', CORNERS, '2.6480'],
  ['journal-out-of-round', 'journal-place', CORNERS, '2.6480'],
  ['big-end-out-of-round', 'big-end-place', THREE, '2.2250'],
];

/** Everything passes: the limits are as wide as a barn door. */
const limits: readonly Limit[] = [
  ...CASES.map(([quantity]) => limitOf(quantity, 'in', { low: '-9', high: '9' })),
  limitOf('bore', 'in', { target: '3.9500' }),
];

function readingsOf(from: string, points: readonly string[] | null, size: string): Reading[] {
  const spots = SPOTS[findQuantity(from)?.spotKind ?? ''] ?? [];
  const at = points === null ? spots : spots.slice(0, 1);
  return at.flatMap((spot) => (points ?? [null]).map((point) => readingOf(from, size, 'in', { spot: spot.id, point })));
}

const verdictOf = (quantity: string, readings: readonly Reading[]): string => {
  const wanted = readingOf('bore-wanted', '3.9500', 'in', { spot: SPOTS.cylinder?.[0]?.id ?? null });
  const spots = SPOTS[findQuantity(quantity)?.spotKind ?? ''] ?? [null];
  const bench = openBench(factsOf({ spots: ALL, limits, readings: [...readings, wanted] }));
  const spot = spots[0] ?? null;
  return bench.verdict(quantity, 'after', null, bench.known(quantity, spot, null, 'after')).name;
};

describe('a missing reading', () => {
  it.each(CASES)(
    'is never a pass: %s wants every reading of %s (common practice, no source)',
    (quantity, from, points, size) => {
      const readings = readingsOf(from, points, size);

      expect(verdictOf(quantity, readings)).toBe('pass');
      expect(verdictOf(quantity, [])).toBe('not measured');
      // The end mains make the line of those between them; a step needs its neighbour.
      const needed =
        quantity === 'main-line'
          ? [readings[0], readings.at(-1)]
          : quantity === 'main-step'
            ? readings.slice(0, 2)
            : readings;
      for (const missing of needed) {
        expect(
          verdictOf(
            quantity,
            readings.filter((it) => it !== missing),
          ),
        ).not.toBe('pass');
      }
    },
  );
});
