/** How much stands side by side on this screen. */
import { useSyncExternalStore } from 'react';

const WIDE = '(min-width: 1200px)';

/** Columns of a table that fit: 16 on a 1280 px tablet, 8 on a 1024 px one. */
export function useRoom(): number {
  const wide = useSyncExternalStore(
    (listener) => {
      const query = window.matchMedia(WIDE);
      query.addEventListener('change', listener);
      return () => query.removeEventListener('change', listener);
    },
    () => window.matchMedia(WIDE).matches,
  );
  return wide ? 16 : 8;
}
