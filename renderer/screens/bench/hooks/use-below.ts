/** How many lines of a list are out of sight below. */
import { type RefObject, useEffect, useState } from 'react';

/** Counts `[data-line]` elements whose middle lies under the lower edge. `content` starts the count anew. */
export function useBelow(list: RefObject<HTMLElement | null>, content: unknown): number {
  const [below, setBelow] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other content, other lines.
  useEffect(() => {
    const element = list.current;
    if (!element) return;
    const count = () => {
      const edge = element.getBoundingClientRect().bottom;
      const lines = [...element.querySelectorAll('[data-line]')].map((line) => line.getBoundingClientRect());
      setBelow(lines.filter((line) => line.top + line.height / 2 > edge).length);
    };
    count();
    element.addEventListener('scroll', count, { passive: true });
    window.addEventListener('resize', count);
    return () => {
      element.removeEventListener('scroll', count);
      window.removeEventListener('resize', count);
    };
  }, [list, content]);
  return below;
}
