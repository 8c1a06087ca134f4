import { describe, expect, it, vi } from 'vitest';
import { actOf, KEYBOARD, keysOf, listenForActs } from '#renderer/kit/keyboard.ts';

const press = (
  key: string,
  held: Partial<Record<'ctrlKey' | 'altKey' | 'shiftKey' | 'metaKey', boolean>> = {},
  code = '',
) => ({
  key,
  code,
  ctrlKey: false,
  altKey: false,
  shiftKey: false,
  metaKey: false,
  ...held,
});

describe('actOf', () => {
  it.each([
    ['Ctrl F', press('f', { ctrlKey: true }), 'find'],
    ['Ctrl N', press('n', { ctrlKey: true }), 'check-in'],
    ['Alt N, which a browser tab leaves us', press('n', { altKey: true }), 'check-in'],
    ['Alt N where the keyboard types another letter for it', press('ń', { altKey: true }, 'KeyN'), 'check-in'],
    ['Ctrl Shift N', press('N', { ctrlKey: true, shiftKey: true }), 'another-casting'],
    ['Alt 3', press('3', { altKey: true }), 'area-3'],
    ['Ctrl Enter', press('Enter', { ctrlKey: true }), 'go'],
    ['the command key of a Mac', press('p', { metaKey: true }), 'print'],
    ['Alt Left', press('ArrowLeft', { altKey: true }), 'back'],
    ['Esc', press('Escape'), 'leave'],
    ['F1', press('F1'), 'keys'],
  ])('%s', (_, pressed, act) => {
    expect(actOf(pressed)).toBe(act);
  });

  it('leaves plain letters and Enter to the field one types in', () => {
    expect(actOf(press('f'))).toBeNull();
    expect(actOf(press('Enter'))).toBeNull();
    expect(actOf(press('F', { shiftKey: true }))).toBeNull();
  });

  it('gives no two acts the same keys', () => {
    const chords = KEYBOARD.flatMap(({ keys, inTab }) => [keys, inTab].filter((chord) => chord !== undefined));

    expect(new Set(chords.map((chord) => JSON.stringify(chord))).size).toBe(chords.length);
  });
});

describe('keysOf', () => {
  it('shows the keys that work on this screen', () => {
    expect(keysOf('check-in', false)).toBe('Ctrl N');
    expect(keysOf('check-in', true)).toBe('Alt N');
    expect(keysOf('find', true)).toBe('Ctrl F');
    expect(keysOf('leave')).toBe('Esc');
  });
});

describe('listenForActs', () => {
  it('lets the newest part of the page answer, and the one before it again when that part is gone', () => {
    const acts = listenForActs(window);
    const [page, part] = [vi.fn(), vi.fn()];
    acts.add('go', page);
    const gone = acts.add('go', part);

    window.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', ctrlKey: true }));
    gone();
    window.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', ctrlKey: true }));
    acts.end();

    expect(part).toHaveBeenCalledTimes(1);
    expect(page).toHaveBeenCalledTimes(1);
  });

  it('leaves a press nobody answers to the browser', () => {
    const acts = listenForActs(window);
    const pressed = new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, cancelable: true });

    window.dispatchEvent(pressed);
    acts.end();

    expect(pressed.defaultPrevented).toBe(false);
  });
});
