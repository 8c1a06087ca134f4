import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnPlace } from '#core/drawing/balloons.ts';
import { drawCasting } from '#core/drawing/draw-casting.ts';
import type { Drawing, Shape } from '#core/drawing/shape.ts';
import { pushrodFour, twinCamFour } from './types.ts';

type Circle = Extract<Shape, { kind: 'circle' }>;
const marks = (drawing: Drawing): Circle[] =>
  drawing.shapes.filter((shape): shape is Circle => shape.kind === 'circle' && shape.role === 'mark');
const dots = (drawing: Drawing) => marks(drawing).filter((shape) => shape.solid === true);
const rings = (drawing: Drawing) => marks(drawing).filter((shape) => shape.solid !== true);

describe('drawBalloons', () => {
  const place = fc.record({ x: fc.integer({ min: 0, max: 10_000 }), y: fc.integer({ min: 0, max: 10_000 }) });

  it('puts the dot exactly on the marked place and the ring beside it, on the plate', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 6 }), fc.boolean(), (places, turned) => {
        const balloons = places.map((at, n) => ({ ...at, label: String(n + 1) }));
        const drawing = drawCasting(twinCamFour, { balloons, turned });
        for (const [n, ring] of rings(drawing).entries()) {
          const dot = dots(drawing)[n];
          const at = places[n];
          if (!dot || !at) throw new Error('a mark has no dot');
          const shown = turned ? { x: 10_000 - at.x, y: 10_000 - at.y } : at;
          expect(dot).toMatchObject({ x: shown.x, y: Math.round((shown.y * drawing.height) / 10_000) });
          expect(Math.hypot(ring.x - dot.x, ring.y - dot.y)).toBeGreaterThan(ring.r + dot.r);
          expect(ring.x - ring.r).toBeGreaterThanOrEqual(0);
          expect(ring.x + ring.r).toBeLessThanOrEqual(10_000);
          expect(ring.y - ring.r).toBeGreaterThanOrEqual(0);
          expect(ring.y + ring.r).toBeLessThanOrEqual(drawing.height);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('does not hide a valve label when there is room elsewhere', () => {
    const drawing = drawCasting(pushrodFour, { balloons: [{ label: '1', x: 5_000, y: 2_400 }] });
    const [ring] = rings(drawing);
    for (const spot of drawing.spots.filter((s) => s.kind === 'valve')) {
      expect(Math.hypot((ring?.x ?? 0) - spot.x, (ring?.y ?? 0) - spot.y)).toBeGreaterThan(310);
    }
  });

  it('leaves the casting where it is: marks and turning never change the layout', () => {
    const plain = drawCasting(twinCamFour);
    const marked = drawCasting(twinCamFour, { balloons: [{ label: 'A', x: 100, y: 9_900 }] });
    expect(marked.height).toBe(plain.height);
    expect(marked.spots).toEqual(plain.spots);
  });
});

describe('turnPlace', () => {
  it('is its own inverse, so a touch on a turned casting marks the place under the finger', () => {
    const once = turnPlace(1_200, 3_400, true);
    expect(once).toEqual({ x: 8_800, y: 6_600 });
    expect(turnPlace(once.x, once.y, true)).toEqual({ x: 1_200, y: 3_400 });
    expect(turnPlace(1_200, 3_400, false)).toEqual({ x: 1_200, y: 3_400 });
  });
});
