import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { NumberPad, type PadKey, typeKey } from '#renderer/kit/bench-number-pad.tsx';

afterEach(cleanup);

describe('typeKey', () => {
  it('types digits and one point, whatever comes after', () => {
    const typed = (['3', '6', '.', '1', '.', '2'] as PadKey[]).reduce(typeKey, '');
    expect(typed).toBe('36.12');
  });
  it('puts the minus in front and takes it away again', () => {
    expect(typeKey('.003', '-')).toBe('-.003');
    expect(typeKey('-.003', '-')).toBe('.003');
  });
  it('takes back the last digit only', () => {
    expect(typeKey('36.1', 'back')).toBe('36.');
    expect(typeKey('', 'back')).toBe('');
  });
});

describe('NumberPad', () => {
  it('sends what is pressed and says what undo would undo', async () => {
    const [onKey, onNext, onUndo] = [vi.fn(), vi.fn(), vi.fn()];
    render(
      <NumberPad
        thing="valve"
        onKey={onKey}
        onNext={onNext}
        onPrevious={() => {}}
        undo={{ words: '36.42', onPress: onUndo }}
      />,
    );
    await userEvent.click(screen.getByRole('button', { name: '7' }));
    await userEvent.click(screen.getByRole('button', { name: 'decimal point' }));
    await userEvent.click(screen.getByRole('button', { name: 'Undo 36.42' }));
    await userEvent.click(screen.getByRole('button', { name: 'Next' }));
    expect(onKey.mock.calls).toEqual([['7'], ['.']]);
    expect(onUndo).toHaveBeenCalledOnce();
    expect(onNext).toHaveBeenCalledOnce();
  });

  it('does nothing where there is nothing to take over', async () => {
    render(<NumberPad thing="valve" onKey={() => {}} onNext={() => {}} onPrevious={() => {}} />);
    expect(screen.getByRole('button', { name: 'Same as last' }).getAttribute('aria-disabled')).toBe('true');
  });
});
