import { describe, expect, it } from 'vitest';
import { type BarFigure, layBars } from '#renderer/kit/bars-scale.ts';

const MM = 1_000_000;
const figure = (value: number | null, more: Partial<BarFigure> = {}): BarFigure => ({
  value,
  low: null,
  high: null,
  target: null,
  ...more,
});

describe('layBars', () => {
  it('shows both limits with room outside and every figure that is not far off', () => {
    const limits = { low: 34.75 * MM, high: 35.25 * MM, target: 35 * MM };
    const scale = layBars([figure(35.1 * MM, limits), figure(35.6 * MM, limits)], MM);
    if (!scale) throw new Error('nothing laid');
    expect(scale.place(34.75 * MM)).toBeGreaterThan(0.05);
    expect(scale.place(35.6 * MM)).toBeLessThan(1);
    expect(scale.beyond(35.6 * MM)).toBe(false);
  });

  it('keeps a figure that is far off at the edge, so that the others stay apart', () => {
    const limits = { low: 34.75 * MM, high: 35.25 * MM };
    const scale = layBars([figure(35 * MM, limits), figure(350 * MM, limits)], MM);
    expect(scale?.place(350 * MM)).toBe(1);
    expect(scale?.beyond(350 * MM)).toBe(true);
    expect(scale?.place(34.75 * MM)).toBeLessThan(0.4);
  });

  it('reads from nought what may be at most a little', () => {
    const scale = layBars([figure(0.02 * MM, { high: 0.05 * MM })], MM);
    expect(scale?.from).toBe(0);
    expect(scale?.ticks[0]).toEqual({ at: 0, text: '0.00' });
  });

  it('spreads figures over the height where only a target is known', () => {
    const scale = layBars(
      [35.5, 36.4, 38.5].map((value) => figure(value * MM, { target: 35.5 * MM })),
      MM,
    );
    expect(scale?.beyond(38.5 * MM)).toBe(false);
  });

  it('lays nothing where nothing is read and nothing is known', () => {
    expect(layBars([figure(null)], MM)).toBeNull();
    expect(layBars([], MM)).toBeNull();
  });

  it('labels in few round steps of the shown unit', () => {
    const scale = layBars([figure(35 * MM, { low: 34.75 * MM, high: 35.25 * MM })], MM);
    expect(scale?.ticks.length).toBeGreaterThanOrEqual(2);
    expect(scale?.ticks.length).toBeLessThanOrEqual(6);
    expect(scale?.ticks.every((tick) => /^3[45]\.\d+$/.test(tick.text))).toBe(true);
  });
});
