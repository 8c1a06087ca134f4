import { describe, expect, it } from 'vitest';
import { drawCasting } from '#core/drawing/draw-casting.ts';
import { type DrawnType, spotKey, viewsOf } from '#core/drawing/drawn-type.ts';
import type { Drawing, Shape } from '#core/drawing/shape.ts';
import { crank, dieselTwoFourValve, pushrodFour, twinCamFour, veeBlock } from './types.ts';

const words = (drawing: Drawing): string[] =>
  drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.words] : []));
const textOf = (drawing: Drawing, wanted: string): Extract<Shape, { kind: 'text' }> => {
  const found = drawing.shapes.find((shape) => shape.kind === 'text' && shape.words === wanted);
  if (found?.kind !== 'text') throw new Error(`${wanted} is not on the drawing`);
  return found;
};
const valves = (drawing: Drawing) => drawing.spots.filter((spot) => spot.kind === 'valve');

const all: Record<string, DrawnType> = { twinCamFour, pushrodFour, dieselTwoFourValve, veeBlock, crank };
const others: DrawnType[] = (['flywheel', 'rod_set', 'cover', 'intake_manifold', 'exhaust_manifold'] as const).map(
  (kind) => ({ kind, counts: { cylinders: 4, rods: 4 }, spots: [] }),
);

describe('drawCasting', () => {
  it.each(Object.entries(all))('gives every spot of the first view its own place and label: %s', (_, type) => {
    const drawing = drawCasting(type);
    expect(drawing.spots.map((spot) => spot.key).sort()).toEqual(type.spots.map(spotKey).sort());
    for (const spot of type.spots.filter((place) => place.kind !== 'chamber')) {
      expect(words(drawing).filter((text) => text === spot.label)).toHaveLength(1);
    }
  });

  it('reads left to right, row by row, in bench order', () => {
    const labels = valves(drawCasting(twinCamFour))
      .sort((a, b) => a.y - b.y || a.x - b.x)
      .map((spot) => spot.label);
    expect(labels.join(' ')).toBe('1I1 1I2 2I1 2I2 3I1 3I2 4I1 4I2 1E1 1E2 2E1 2E2 3E1 3E2 4E1 4E2');
    const inLine = valves(drawCasting(pushrodFour)).sort((a, b) => a.x - b.x);
    expect(inLine.map((spot) => spot.label).join(' ')).toBe('1E 1I 2I 2E 3E 3I 4I 4E');
  });

  it('writes under a cylinder the number its places have: the right head of an eight reads 2, 4, 6, 8', () => {
    const seated = [2, 4, 6, 8];
    const spots = pushrodFour.spots.map((spot) => ({
      ...spot,
      label: spot.label.replace(/\d/, (own) => String(seated[Number(own) - 1])),
    }));
    const under = words(drawCasting({ ...pushrodFour, spots })).filter((text) => /^\d$/.test(text));
    expect(under).toEqual(['2', '4', '6', '8']);
    expect(words(drawCasting(pushrodFour)).filter((text) => /^\d$/.test(text))).toEqual(['1', '2', '3', '4']);
  });

  it('keeps the bench order from front to back when four valves of a cylinder stand in one row', () => {
    const labels = valves(drawCasting(dieselTwoFourValve))
      .sort((a, b) => a.x - b.x)
      .map((spot) => spot.label);
    expect(labels.join(' ')).toBe('1I1 1E1 1I2 1E2 2I1 2E1 2I2 2E2');
  });

  it.each([
    ['twinCamFour', twinCamFour],
    ['pushrodFour', pushrodFour],
    ['dieselTwoFourValve', dieselTwoFourValve],
  ])('keeps valves apart from each other and inside their chamber: %s', (_, type) => {
    const drawing = drawCasting(type);
    const chambers = drawing.spots.filter((spot) => spot.kind === 'chamber');
    const all = valves(drawing);
    for (const valve of all) {
      const chamber = chambers.find((spot) => spot.label === `C${valve.label[0]}`);
      if (!chamber) throw new Error('chamber missing');
      expect(Math.hypot(valve.x - chamber.x, valve.y - chamber.y) + valve.r).toBeLessThanOrEqual(chamber.r * 1.03);
      for (const other of all.filter((spot) => spot !== valve)) {
        expect(Math.hypot(valve.x - other.x, valve.y - other.y)).toBeGreaterThan(valve.r + other.r);
      }
    }
  });

  it('writes INTAKE beside the intake row and EXHAUST beside the exhaust row, whichever way the head lies', () => {
    for (const options of [{}, { turned: true }, { view: 'top' as const }]) {
      const drawing = drawCasting(twinCamFour, options);
      const middle = (side: string) => {
        const here = valves(drawing).filter((spot) => spot.label.includes(side));
        return here.reduce((sum, spot) => sum + spot.y, 0) / here.length;
      };
      const [intake, exhaust] = [textOf(drawing, 'INTAKE').y, textOf(drawing, 'EXHAUST').y];
      expect(Math.sign(intake - exhaust)).toBe(Math.sign(middle('I') - middle('E')));
    }
  });

  it('moves places and leaves words as they are when the casting is turned', () => {
    const [plain, turned] = [drawCasting(twinCamFour), drawCasting(twinCamFour, { turned: true })];
    expect(words(turned).sort()).toEqual(words(plain).sort());
    for (const spot of plain.spots) {
      const moved = turned.spots.find((other) => other.key === spot.key);
      expect(moved).toMatchObject({ x: 10_000 - spot.x, r: spot.r });
      expect(Math.abs((moved?.y ?? 0) + spot.y - plain.height)).toBeLessThanOrEqual(1);
    }
    expect(textOf(plain, 'FRONT').x).toBeLessThan(2_000);
    expect(textOf(turned, 'FRONT')).toMatchObject({ anchor: 'end' });
    expect(textOf(turned, 'FRONT').x).toBeGreaterThan(8_000);
    expect(turned.caption).toBe('deck up, front is the right end');
  });

  it('rolls the head over so that the front stays and the rows change places', () => {
    const [deck, top] = [drawCasting(twinCamFour), drawCasting(twinCamFour, { view: 'top' })];
    const at = (drawing: Drawing, label: string) => valves(drawing).find((spot) => spot.label === label);
    expect(at(top, '1I1')?.x).toBe(at(deck, '1I1')?.x);
    expect(at(top, '1I1')?.y).toBe(at(deck, '1E1')?.y);
  });

  it('draws the left bank below the right one, since left is meant from behind the engine', () => {
    const drawing = drawCasting(veeBlock);
    expect(textOf(drawing, 'LEFT BANK').y).toBeGreaterThan(textOf(drawing, 'RIGHT BANK').y);
    const y = (label: string) => drawing.spots.find((spot) => spot.label === label)?.y ?? 0;
    expect(y('1')).toBeGreaterThan(y('2'));
  });

  it('throws crank pins between the mains they stand between', () => {
    const order = [...drawCasting(crank).spots].sort((a, b) => a.x - b.x).map((spot) => spot.label);
    expect(order).toEqual(['M1', 'P1', 'M2', 'P2', 'M3']);
  });

  it.each([...Object.values(all), ...others])('keeps everything of $kind on the plate in every view', (type) => {
    for (const view of viewsOf(type.kind)) {
      for (const turned of [false, true]) {
        const drawing = drawCasting(type, { view, turned });
        for (const [x, y] of pointsOf(drawing)) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(10_000);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(drawing.height);
        }
        expect(drawing.shapes.length).toBeGreaterThan(5);
      }
    }
  });
});

const circlePoints = (shape: Shape) =>
  shape.kind === 'circle'
    ? [
        [shape.x - shape.r, shape.y - shape.r],
        [shape.x + shape.r, shape.y + shape.r],
      ]
    : [];
const linePoints = (shape: Shape) =>
  shape.kind === 'line'
    ? [
        [shape.x1, shape.y1],
        [shape.x2, shape.y2],
      ]
    : [];
const textPoints = (shape: Shape) => (shape.kind === 'text' ? [[shape.x, shape.y]] : []);
function pathPoints(shape: Shape): number[][] {
  const numbers = shape.kind === 'path' ? (shape.d.match(/-?\d+/g)?.map(Number) ?? []) : [];
  return numbers.flatMap((n, k) => (k % 2 === 0 ? [[n, numbers[k + 1] ?? 0]] : []));
}

function pointsOf(drawing: Drawing): number[][] {
  return drawing.shapes.flatMap((shape) => [
    ...circlePoints(shape),
    ...linePoints(shape),
    ...textPoints(shape),
    ...pathPoints(shape),
  ]);
}
