/** Asking and telling, as the screens see it. TanStack Query is known here and in renderer/app only. */
import { keepPreviousData, type QueryClient, type UseQueryResult, useQuery } from '@tanstack/react-query';
import { createContext, useCallback, useContext, useRef, useState, useSyncExternalStore } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import type { Client, CommandName, Link, QueryName } from './client.ts';
import { newKey } from './client.ts';
import { NOT_REACHED, type RequestRefused } from './request-refused.ts';
import type { Announcement } from './wire.ts';

export const ClientContext = createContext<Client | null>(null);

/** The client of this page. */
export function useClient(): Client {
  const client = useContext(ClientContext);
  if (!client) throw new Error('ClientContext is empty: the app is not around this screen.');
  return client;
}

/** When last kept, since when alone, and who acts. */
export function useLink(): Link {
  const client = useClient();
  return useSyncExternalStore(client.onLink, client.link);
}

export type QueryOptions = Readonly<{
  /** False: do not ask yet. */
  enabled?: boolean;
  /** The ticket this answer is about: it is asked again only when that ticket was touched. */
  ticket?: number | undefined;
  /** Show the answer before while the next one for other input is on its way. */
  keep?: boolean;
}>;

/** The answer of a query, kept fresh: asked again after every command that may have changed it. */
export function useAppQuery<N extends QueryName>(
  name: N,
  input: InputOf<App[N]>,
  options: QueryOptions = {},
): UseQueryResult<OutputOf<App[N]>, RequestRefused> {
  const client = useClient();
  const { person } = useLink();
  return useQuery<OutputOf<App[N]>, RequestRefused>({
    queryKey: [name, input, person],
    queryFn: () => client.call(name, input),
    enabled: options.enabled ?? true,
    meta: { ticket: options.ticket },
    ...(options.keep && { placeholderData: keepPreviousData }),
  });
}

export type Command<N extends CommandName> = Readonly<{
  /** Sends it. Resolves to the answer, or to undefined when it was refused (see `error`) or waits for the PIN. */
  send(input: InputOf<App[N]>): Promise<OutputOf<App[N]> | undefined>;
  error: RequestRefused | null;
  pending: boolean;
  /** True while the person's PIN is asked again: show `PinStrip`. */
  wantsPin: boolean;
  /** Sends the same input again with this PIN; the promise of `send` resolves then. */
  givePin(pin: string): Promise<void>;
  /** Leaves the PIN strip; what was typed stays and nothing is sent. */
  dropPin(): void;
  /** Forgets the last refusal. */
  reset(): void;
}>;

/** Codes by which the host asks for the PIN again. */
const asksPin = (error: RequestRefused): boolean => /\/pin-(again|wrong|wait)$/.test(error.reply.code);

type Sending<N extends CommandName> = {
  input: InputOf<App[N]>;
  key: string;
  settle: (output: OutputOf<App[N]> | undefined) => void;
};

/**
 * Run a command from an event handler; `error` is what to show beside the form.
 *
 * A command that got no answer and is sent again with the same input carries the same key, so it is done once.
 */
export function useAppCommand<N extends CommandName>(name: N): Command<N> {
  const client = useClient();
  const [error, setError] = useState<RequestRefused | null>(null);
  const [pending, setPending] = useState(false);
  const [wantsPin, setWantsPin] = useState(false);
  const waiting = useRef<Sending<N> | null>(null);
  const unanswered = useRef<{ text: string; key: string } | null>(null);

  const attempt = useCallback(
    async (sending: Sending<N>, pin?: string) => {
      setPending(true);
      setError(null);
      try {
        const output = await client.call(name, sending.input, { key: sending.key, pin });
        unanswered.current = null;
        waiting.current = null;
        setWantsPin(false);
        sending.settle(output);
      } catch (thrown) {
        const refused = thrown as RequestRefused;
        const lost = refused.reply?.code === NOT_REACHED;
        unanswered.current = lost ? { text: JSON.stringify(sending.input), key: sending.key } : null;
        if (refused.reply && asksPin(refused)) {
          waiting.current = sending;
          setWantsPin(true);
          setError(pin === undefined ? null : refused);
        } else {
          setError(refused);
          setWantsPin(false);
          sending.settle(undefined);
        }
      } finally {
        setPending(false);
      }
    },
    [client, name],
  );

  const send = useCallback(
    (input: InputOf<App[N]>) =>
      new Promise<OutputOf<App[N]> | undefined>((settle) => {
        const before = unanswered.current;
        const key = before && before.text === JSON.stringify(input) ? before.key : newKey();
        void attempt({ input, key, settle });
      }),
    [attempt],
  );
  const givePin = useCallback(
    async (pin: string) => {
      if (waiting.current) await attempt(waiting.current, pin);
    },
    [attempt],
  );
  const dropPin = useCallback(() => {
    waiting.current?.settle(undefined);
    waiting.current = null;
    setWantsPin(false);
    setError(null);
  }, []);
  const reset = useCallback(() => setError(null), []);
  return { send, error, pending, wantsPin, givePin, dropPin, reset };
}

/**
 * Asks every shown answer again after a command, here or elsewhere; an answer about one ticket only when touched.
 *
 * Announcements of 30 ms are taken together: our own command is told twice, by its reply and by the host.
 *
 * @returns what ends it
 */
export function refreshOnChange(client: Client, queries: QueryClient): () => void {
  let gathered: Announcement[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  const run = () => {
    const all = gathered;
    gathered = [];
    timer = undefined;
    void queries.invalidateQueries({
      predicate: (query) => isStale(String(query.queryKey[0]), query.meta?.ticket, all),
    });
  };
  const stop = client.onChange((what) => {
    gathered.push(what);
    timer ??= setTimeout(run, 30);
  });
  return () => {
    stop();
    clearTimeout(timer);
  };
}

/** Requests about people and screens: what they change is read by requests of the same folders only. */
const ASIDE = /^(staff|devices)\//;

/**
 * Whether the answer of a query, about `ticket` or about no one ticket, may have changed.
 *
 * A command that names no ticket may have touched any.
 */
export function isStale(query: string, ticket: unknown, changes: readonly Announcement[]): boolean {
  const heard = changes.filter((what) => !ASIDE.test(what.name) || ASIDE.test(query));
  if (typeof ticket !== 'number') return heard.length > 0;
  return heard.some((what) => what.touched.length === 0 || what.touched.includes(ticket));
}
