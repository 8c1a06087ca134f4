import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { Profile, type ProfileAxis } from '#renderer/kit/bench-profile.tsx';

afterEach(cleanup);

const INCH = 25_400_000;
const axis = (words: string, read: readonly (string | null)[]): ProfileAxis => ({
  words,
  points: ['top', 'middle', 'bottom'].map((level, n) => ({
    words: level,
    text: read[n] ?? '',
    value: read[n] ? Math.round(Number(read[n]) * INCH) : null,
  })),
});
const show = (axes: readonly ProfileAxis[], wanted: number | null = null) =>
  render(
    <Profile
      axes={axes}
      low={null}
      high={null}
      target={3.95 * INCH}
      wanted={wanted}
      perUnit={INCH}
      unit="in"
      label="cylinder 3"
    />,
  );
const worn = [axis('thrust', ['3.9572', '3.9544', '3.9514']), axis('pin axis', ['3.9539', '3.9525', '3.9509'])];
const discs = (container: HTMLElement) =>
  [...container.querySelectorAll('circle')].map((one) => Number(one.getAttribute('cx')));

describe('Profile', () => {
  it('puts the thrust axis at the left wall and the pin axis at the right, wider where it is worn', () => {
    const { container } = show(worn);
    const [top = 0, middle = 0, bottom = 0, pinTop = 0, , pinBottom = 0] = discs(container);
    expect(top).toBeLessThan(middle);
    expect(middle).toBeLessThan(bottom);
    expect(pinTop).toBeGreaterThan(pinBottom);
    // Both walls are drawn to one scale: 3.9572 in lies further out than 3.9539 in.
    expect(320 - top).toBeGreaterThan(pinTop - 320);
  });

  it('draws the size it was made to dashed and the size wanted apart from it, at both walls', () => {
    const { container } = show(worn, 3.97 * INCH);
    expect(container.querySelectorAll('path.target')).toHaveLength(2);
    expect(container.querySelectorAll('path.wanted')).toHaveLength(2);
  });

  it('says what is not read and draws no wall through it', () => {
    const { container } = show([axis('thrust', ['3.9572', null, '3.9514']), axis('pin axis', [null, null, null])]);
    expect(discs(container)).toHaveLength(2);
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
      'cylinder 3: thrust top 3.9572, middle not measured, bottom 3.9514; pin axis top not measured, middle not measured, bottom not measured',
    );
  });
});
