/** The door to the practice shop: the host keeps it as a workspace of its own and shows it in place of this one. */
import { useState } from 'react';
import { notReached, RequestRefused } from '../../client/request-refused.ts';

export type PracticeDoor = Readonly<{ open(): void; pending: boolean; error: RequestRefused | null }>;

/** The door, or null where this host has none. */
export function usePracticeDoor(): PracticeDoor | null {
  const [pending, setPending] = useState(false);
  const [error, setError] = useState<RequestRefused | null>(null);
  const open = async () => {
    setPending(true);
    setError(null);
    try {
      const response = await fetch('./practice', { method: 'POST', credentials: 'same-origin' });
      if (!response.ok) throw notReached();
      window.location.reload();
    } catch (thrown) {
      setError(thrown instanceof RequestRefused ? thrown : notReached());
      setPending(false);
    }
  };
  return { open: () => void open(), pending, error };
}
