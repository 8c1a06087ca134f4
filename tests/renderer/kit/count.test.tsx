import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import { Count, readCount } from '#renderer/kit/count.tsx';

afterEach(cleanup);

function Counted({ start }: { start: number | null }) {
  const [value, setValue] = useState(start);
  return (
    <>
      <Count label="Dowels" value={value} onChange={setValue} of={2} />
      <output>{String(value)}</output>
    </>
  );
}

describe('Count', () => {
  it('counts by typing, by plus and by minus, and never below nought', async () => {
    render(<Counted start={null} />);
    const user = userEvent.setup();

    await user.type(screen.getByRole('textbox', { name: 'Dowels, of 2' }), '1');
    await user.click(screen.getByRole('button', { name: 'One more: Dowels' }));
    expect(screen.getByRole('status').textContent).toBe('2');
    for (let i = 0; i < 4; i += 1) await user.click(screen.getByRole('button', { name: 'One fewer: Dowels' }));

    expect(screen.getByRole('status').textContent).toBe('0');
  });
});

describe('readCount', () => {
  it.each([
    ['12', 12],
    ['', null],
    ['twelve', null],
    ['99999', 999],
    ['1 2', 12],
  ])('%s', (text, value) => {
    expect(readCount(text, 999)).toBe(value);
  });
});
