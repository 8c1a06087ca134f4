/** The only door from the screens to the host. */
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { RequestRefused } from './request-refused.ts';
import { bridgeTransport, httpTransport, type Transport } from './transport.ts';
import type { Announcement } from './wire.ts';

export type RequestName = keyof App & string;
export type QueryName = { [N in RequestName]: App[N]['kind'] extends 'query' ? N : never }[RequestName];
export type CommandName = { [N in RequestName]: App[N]['kind'] extends 'command' ? N : never }[RequestName];

export type CallOptions = Readonly<{
  /** The person's PIN, where it is asked again. */
  pin?: string | undefined;
  /** The same key for the same act sent again. Made here when empty. */
  key?: string | undefined;
  /** The person it is sent for, where that is not the one who acts on this page: a lead beside, a reading kept earlier. */
  as?: number | null | undefined;
}>;

/** What the frame shows about the line to the host. */
export type Link = Readonly<{
  /** When the last command was on disk, a UTC moment; empty before the first. */
  keptAt: string | null;
  /** Since when the host does not answer, a UTC moment; null while it does. */
  lostAt: string | null;
  /** The person who acts here; null lets the host take the one signed in. */
  person: number | null;
}>;

export type Client = Readonly<{
  /** The host's time, a UTC moment: screens show the shop's clock, not the tablet's. */
  now(): string;
  /** @throws RequestRefused */
  call<N extends RequestName>(name: N, input: InputOf<App[N]>, options?: CallOptions): Promise<OutputOf<App[N]>>;
  link(): Link;
  /** From now on requests are sent as this person. */
  actAs(person: number | null): void;
  /** Called after each change of `link`. Returns the end. */
  onLink(listener: () => void): () => void;
  /** Called after each command, from here or elsewhere, with the tickets it touched. Returns the end. */
  onChange(listener: (what: Announcement) => void): () => void;
}>;

/** 16 random bytes as hex: over plain http a browser has no `randomUUID`. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

const isQuery = (name: string): boolean => /\/(get|list|find)-/.test(name);

/** The client of this page: the window's bridge where there is one, else http. */
export const openClient = (): Client =>
  createClient(window.benchtag ? bridgeTransport(window.benchtag) : httpTransport());

export function createClient(transport: Transport): Client {
  let link: Link = { keptAt: null, lostAt: null, person: null };
  let ahead = 0;
  const now = () => new Date(Date.now() + ahead).toISOString();
  const linkListeners = new Set<() => void>();
  const changeListeners = new Set<(what: Announcement) => void>();

  const setLink = (change: Partial<Link>) => {
    link = { ...link, ...change };
    for (const listener of linkListeners) listener();
  };
  const announce = (what: Announcement) => {
    for (const listener of changeListeners) listener(what);
  };
  const setThere = (there: boolean) => {
    if (there === (link.lostAt === null)) return;
    setLink({ lostAt: there ? null : now() });
    // What happened meanwhile is unknown: every screen asks again.
    if (there) announce({ name: 'client/found-again', touched: [] });
  };
  transport.listen(announce, setThere);

  async function call(name: string, input: unknown, options: CallOptions = {}): Promise<unknown> {
    const query = isQuery(name);
    const person = options.as ?? link.person;
    const reply = await transport
      .call({
        name,
        input,
        ...(person !== null && { as: person }),
        ...(options.pin !== undefined && { pin: options.pin }),
        ...(!query && { key: options.key ?? newKey() }),
      })
      .catch((error: unknown) => {
        setThere(false);
        throw error;
      });
    setThere(true);
    if (reply.ok) ahead = Date.parse(reply.at) - Date.now() || 0;
    if (!reply.ok) throw new RequestRefused(reply.error);
    if (!query) {
      setLink({ keptAt: reply.at });
      announce({ name, touched: reply.touched });
    }
    return reply.output;
  }

  return {
    call: call as Client['call'],
    now,
    link: () => link,
    actAs: (person) => setLink({ person }),
    onLink(listener) {
      linkListeners.add(listener);
      return () => linkListeners.delete(listener);
    },
    onChange(listener) {
      changeListeners.add(listener);
      return () => changeListeners.delete(listener);
    },
  };
}
