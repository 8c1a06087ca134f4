/** The outbox of this page, opened when the bench is first shown. */
import { createContext, useContext, useSyncExternalStore } from 'react';
import type { Client } from './client.ts';
import { createOutbox, type Outbox, type OutboxState } from './outbox.ts';
import { browserStorage } from './outbox-storage.ts';

/** One a client, opened when the bench is first shown; it goes on sending when the person goes to another area. */
const opened = new WeakMap<Client, Outbox>();

export function outboxOf(client: Client): Outbox {
  const outbox = opened.get(client) ?? createOutbox(client, browserStorage());
  opened.set(client, outbox);
  return outbox;
}

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
