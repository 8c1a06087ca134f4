/** A sign-in lapses when nobody touches the screen for the shop's idle minutes; what was typed stays behind it. */
import { useCallback, useEffect, useState } from 'react';

const SIGNS_OF_LIFE = ['keydown', 'pointerdown', 'wheel'] as const;

/** @returns whether it lapsed, and what starts the time anew */
export function useIdle(minutes: number): [boolean, () => void] {
  const [idle, setIdle] = useState(false);
  useEffect(() => {
    if (idle) return;
    let timer: ReturnType<typeof setTimeout>;
    const restart = () => {
      clearTimeout(timer);
      timer = setTimeout(() => setIdle(true), minutes * 60_000);
    };
    restart();
    for (const sign of SIGNS_OF_LIFE) window.addEventListener(sign, restart);
    return () => {
      clearTimeout(timer);
      for (const sign of SIGNS_OF_LIFE) window.removeEventListener(sign, restart);
    };
  }, [idle, minutes]);
  return [idle, useCallback(() => setIdle(false), [])];
}
