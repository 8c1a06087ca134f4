/** The find box: what is typed in it, and whether its results lie over the page. */
import { useCallback, useMemo, useRef, useState } from 'react';
import type { FindBox } from './band.tsx';

export type Find = Readonly<{ box: FindBox; open: boolean; ask(): void; close(): void }>;

export function useFind(): Find {
  const [text, setText] = useState('');
  const [asked, setAsked] = useState(0);
  /** Where the hand was before, so that Esc leads back to it. */
  const before = useRef<HTMLElement | null>(null);

  const ask = useCallback(() => {
    const focused = document.activeElement;
    if (focused instanceof HTMLElement && focused !== document.body) before.current = focused;
    setAsked((times) => times + 1);
  }, []);
  const close = useCallback(() => {
    setText('');
    if (before.current?.isConnected) setTimeout(() => before.current?.focus());
  }, []);
  const onKey = useCallback(
    (key: string): boolean => {
      if (key === 'Escape') {
        close();
        return true;
      }
      if (key !== 'ArrowDown' && key !== 'Enter') return false;
      const first = document.querySelector<HTMLElement>('[data-find-results] [data-row]');
      if (key === 'Enter') first?.click();
      else first?.focus();
      return true;
    },
    [close],
  );
  const box = useMemo<FindBox>(() => ({ text, asked, onText: setText, onKey }), [text, asked, onKey]);
  return { box, open: text.trim() !== '', ask, close };
}
