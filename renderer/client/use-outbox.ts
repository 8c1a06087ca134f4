/** The outbox of this page, opened when the bench is first shown. */
import { createContext, useContext, useSyncExternalStore } from 'react';
import type { Outbox, OutboxState } from './outbox.ts';

export const OutboxContext = createContext<Outbox | null>(null);

/** The outbox around this screen. */
export function useOutbox(): Outbox {
  const outbox = useContext(OutboxContext);
  if (!outbox) throw new Error('OutboxContext is empty: the bench is not around this screen.');
  return outbox;
}

/** What waits in it. */
export function useOutboxState(): OutboxState {
  const outbox = useOutbox();
  return useSyncExternalStore(outbox.onState, outbox.state);
}
