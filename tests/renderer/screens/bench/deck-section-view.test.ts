import { describe, expect, it } from 'vitest';
import { laySection, lengthOf } from '#renderer/screens/bench/deck-section-view.ts';
import { sectionOf } from './surveys.ts';

const HOLLOW = sectionOf('row-2', 'along, middle', 'along', '.0048');
const LONG = 457_200_000;

describe('laySection', () => {
  it('hangs the hollow under the straightedge, deepest where it is worst', () => {
    const laid = laySection(HOLLOW, false, LONG);
    const [first, middle, last] = laid.points;
    expect(first?.y).toBe(last?.y);
    expect(middle?.y).toBeGreaterThan(first?.y ?? 0);
    expect(laid.worst).toEqual({ x: middle?.x, from: first?.y, to: middle?.y });
    expect(laid.chord).toBe(`M${laid.left} ${first?.y}H${laid.right}`);
  });

  it('stands a crown above it', () => {
    const crown = { ...HOLLOW, points: HOLLOW.points.map((point) => ({ ...point, height: -point.height })) };
    const laid = laySection(crown, false, LONG);
    expect(laid.worst?.to).toBeLessThan(laid.worst?.from ?? 0);
  });

  it('says how much larger heights are drawn, in two figures (exact mathematics: 50 px for 48 tenths, 620 px for 18 in)', () => {
    const exact = (50 / (48 * 2_540)) * (LONG / 620);
    expect(exact).toBeCloseTo(302.4, 1);
    expect(laySection(HOLLOW, false, LONG).times).toBe(300);
    expect(laySection(HOLLOW, false, null).times).toBeNull();
  });

  it('turns end for end with the casting', () => {
    const points = [
      { code: 'a', at: 0, height: 0 },
      { code: 'b', at: 0.25, height: -9 },
      { code: 'c', at: 1, height: 0 },
    ];
    const one = laySection({ points, worstAt: 'b' }, false, LONG);
    const other = laySection({ points, worstAt: 'b' }, true, LONG);
    expect((one.worst?.x ?? 0) + (other.worst?.x ?? 0)).toBe(one.width);
  });

  it('marks nothing on a flat line', () => {
    const flat = { ...HOLLOW, points: HOLLOW.points.map((point) => ({ ...point, height: 0 })) };
    expect(laySection(flat, false, LONG).worst).toBeNull();
  });
});

describe('lengthOf', () => {
  it('is the length, the width or the diagonal of the face (exact mathematics: 3, 4, 5)', () => {
    const frame = { columns: 3, rows: 3, length: 4, width: 3 };
    expect(lengthOf({ kind: 'along' }, frame)).toBe(4);
    expect(lengthOf({ kind: 'across' }, frame)).toBe(3);
    expect(lengthOf({ kind: 'diagonal' }, frame)).toBe(5);
    expect(lengthOf({ kind: 'diagonal' }, { ...frame, width: null })).toBeNull();
  });
});
