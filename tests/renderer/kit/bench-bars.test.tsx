import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { type Bar, Bars } from '#renderer/kit/bench-bars.tsx';
import type { Mark } from '#renderer/kit/mark.tsx';

afterEach(cleanup);

const MM = 1_000_000;
const bar = (label: string, value: number | null, mark: Mark, words: string): Bar => ({
  key: label,
  label,
  value: value === null ? null : value * MM,
  text: value === null ? '' : value.toFixed(2),
  mark,
  words,
  low: 34.75 * MM,
  high: 35.25 * MM,
  target: 35 * MM,
  starts: false,
});
const bars = [
  bar('1I', 35.1, 'pass', 'pass'),
  bar('2I', 35.6, 'over', 'too tall'),
  bar('1E', 34.6, 'under', 'too short'),
  bar('2E', null, 'not-measured', 'not measured'),
];
const show = (all = bars) =>
  render(<Bars bars={all} current="2I" perUnit={MM} unit="mm" label="With shims" width={800} />);

describe('Bars', () => {
  it('says every figure and verdict to a screen reader', () => {
    show();
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
      'With shims: 1I 35.10 pass, 2I 35.60 too tall, 1E 34.60 too short, 2E not measured',
    );
  });

  it('draws no bar for what is not measured, and says so', () => {
    const { container } = show();
    expect(container.querySelectorAll('rect.bar')).toHaveLength(3);
    expect(container.textContent).toContain('not measured');
  });

  it('tells verdicts apart without colour: a disc, a triangle up, a triangle down, and the word where it does not pass', () => {
    const { container } = show();
    const heads = [...container.querySelectorAll('g[class] > *')].map((head) =>
      `${head.tagName} ${head.getAttribute('d') ?? ''}`.trim(),
    );
    expect(new Set(heads).size).toBe(3);
    expect(container.textContent).toContain('too tall');
    expect(container.textContent).toContain('too short');
    expect([...container.querySelectorAll('text')].filter((text) => text.textContent === 'pass')).toEqual([]);
  });

  it('breaks the bar of a figure that lies far beyond the picture', () => {
    const { container } = show([bar('1I', 35.1, 'pass', 'pass'), bar('2I', 351, 'over', 'too tall')]);
    expect(container.querySelectorAll('path.cut')).toHaveLength(1);
  });
});
