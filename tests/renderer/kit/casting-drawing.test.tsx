import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { DrawnType } from '#core/drawing/drawn-type.ts';
import { CastingDrawing, placeOf } from '#renderer/kit/casting-drawing.tsx';

afterEach(cleanup);

const head: DrawnType = {
  kind: 'head',
  counts: { cylinders: 1 },
  spots: (['1I', '1E'] as const).map((label, n) => ({
    kind: 'valve',
    label,
    benchOrder: n + 1,
    row: 1,
    bank: 'none',
    cylinder: 1,
    side: n === 0 ? 'I' : 'E',
  })),
};
const plate = { width: 10_000, height: 4_000 };
const box = { left: 100, top: 50, width: 500, height: 200 };

describe('placeOf', () => {
  it('marks the place under the finger in ten thousandths of the picture', () => {
    expect(placeOf({ detail: 1, clientX: 225, clientY: 100 }, box, plate, null, false)).toEqual({
      x: 2_500,
      y: 2_500,
      spot: null,
    });
  });
  it('marks the same place of the metal when the casting lies turned', () => {
    expect(placeOf({ detail: 1, clientX: 225, clientY: 100 }, box, plate, null, true)).toMatchObject({
      x: 7_500,
      y: 7_500,
    });
  });
  it('takes the middle of the spot from the keyboard', () => {
    const spot = { key: 'valve:1I', label: '1I', kind: 'valve', x: 4_000, y: 1_000, r: 300 };
    expect(placeOf({ detail: 0, clientX: 0, clientY: 0 }, box, plate, spot, false)).toEqual({
      x: 4_000,
      y: 2_500,
      spot,
    });
  });
  it('keeps a touch on the very edge inside', () => {
    expect(placeOf({ detail: 1, clientX: 700, clientY: 0 }, box, plate, null, false)).toMatchObject({
      x: 10_000,
      y: 0,
    });
  });
});

describe('CastingDrawing', () => {
  it('is one stop for Tab, arrows go from spot to spot, Enter marks', async () => {
    const onPlace = vi.fn();
    render(<CastingDrawing type={head} label="Head 30918" onPlace={onPlace} />);
    await userEvent.tab();
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'valve 1I' }));
    await userEvent.keyboard('{ArrowRight}{Enter}');
    expect(onPlace).toHaveBeenCalledOnce();
    expect(onPlace.mock.calls[0]?.[0]).toMatchObject({ spot: { label: '1E' } });
    await userEvent.tab();
    expect(document.activeElement).toBe(document.body);
  });

  it('says how the casting lies and is only looked at without onPlace', () => {
    render(<CastingDrawing type={head} label="Head 30918" options={{ turned: true }} />);
    expect(screen.getByRole('img', { name: 'Head 30918, deck up, front is the right end' })).toBeTruthy();
    expect(screen.queryByRole('button')).toBeNull();
  });

  it('gives the exact touched place though a spot lies there', () => {
    const onPlace = vi.fn();
    render(<CastingDrawing type={head} label="Head" onPlace={onPlace} />);
    const spot = screen.getByRole('button', { name: 'valve 1E' });
    const area = spot.parentElement;
    if (!area) throw new Error('no area');
    area.getBoundingClientRect = () => ({ ...box, right: 0, bottom: 0, x: 0, y: 0, toJSON: () => '' });
    fireEvent.click(spot, { detail: 1, clientX: 350, clientY: 150 });
    expect(onPlace).toHaveBeenCalledWith(expect.objectContaining({ x: 5_000, y: 5_000 }));
  });
});
