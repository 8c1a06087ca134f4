/**
 * What was entered at the bench and is not yet known to be kept: one list in order, one sender, each entry with its own
 * request key, so that a reload, a lost line or a second try never loses and never doubles a reading.
 */
import type { Client, CommandName } from './client.ts';
import { NOT_REACHED, RequestRefused } from './request-refused.ts';
import type { ReplyError } from './wire.ts';

/** A command as it is sent; its input is checked by the host. */
export type Parcel = Readonly<{ name: CommandName; input: Readonly<Record<string, unknown>> }>;

export type Entry = Readonly<{
  /** Request key of the command, and the name of the entry. */
  key: string;
  /** Place in the list. */
  order: number;
  /** Null: nothing to send unless `after` came through. */
  parcel: Parcel | null;
  /** Sent in place of `parcel` when the entry `key` was kept; the id it answered with is put into the input. */
  after?: Readonly<{ key: string; parcel: Parcel }> | undefined;
  /** The person who entered it. */
  person: number | null;
  /** A UTC moment of this tablet. */
  at: string;
  /** Which place on the screen it belongs to. */
  place: string;
  /** What was typed, as shown meanwhile. Empty: the place becomes empty. */
  shown: string;
  /** Set when the host said no: it is no longer sent and waits for a person. */
  refused?: ReplyError | undefined;
}>;

/** Where entries are kept over a reload. */
export type OutboxStorage = Readonly<{
  list(): Promise<Entry[]>;
  put(entry: Entry): Promise<void>;
  remove(key: string): Promise<void>;
}>;

export type OutboxState = Readonly<{
  /** In order; refused ones too. */
  entries: readonly Entry[];
  /** False until what was left from before the reload has been read. */
  ready: boolean;
  /** True when this tablet cannot keep entries over a reload. */
  fragile: boolean;
}>;

export type NewEntry = Readonly<{
  key: string;
  parcel: Parcel | null;
  after?: Entry['after'];
  place: string;
  shown: string;
}>;

export type Outbox = Readonly<{
  state(): OutboxState;
  onState(listener: () => void): () => void;
  /** Keeps the entry here, then sends it in its turn. */
  add(entry: NewEntry): Promise<void>;
  /** Forgets a refused entry, or one that was never sent. */
  drop(key: string): Promise<void>;
  /** Try now, for example when the line came back. */
  send(): Promise<void>;
  end(): void;
}>;

/** How long after a lost line the next try is made by itself. */
const AGAIN_MS = 4000;

export function createOutbox(client: Client, storage: OutboxStorage, now: () => string = client.now): Outbox {
  let state: OutboxState = { entries: [], ready: false, fragile: false };
  const listeners = new Set<() => void>();
  let sending: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let ended = false;

  const set = (change: Partial<OutboxState>) => {
    state = { ...state, ...change };
    for (const listener of listeners) listener();
  };
  const keep = async (work: Promise<void>) => {
    // A tablet that cannot keep it (a private window, a full disk) still sends it; the foot says so.
    await work.catch(() => set({ fragile: true }));
  };
  const replace = async (entry: Entry) => {
    set({ entries: state.entries.map((one) => (one.key === entry.key ? entry : one)) });
    await keep(storage.put(entry));
  };
  const remove = async (key: string) => {
    set({ entries: state.entries.filter((one) => one.key !== key) });
    await keep(storage.remove(key));
  };

  const loaded = storage
    .list()
    .catch(() => {
      set({ fragile: true });
      return [];
    })
    .then((before) => {
      const here = new Set(state.entries.map((entry) => entry.key));
      const old = before.filter((entry) => !here.has(entry.key)).sort((a, b) => a.order - b.order);
      set({ entries: [...old, ...state.entries], ready: true });
    });

  /** Sends the first entry that still waits. False: nothing more can be sent now. */
  async function sendFirst(): Promise<boolean> {
    const entry = state.entries.find((one) => !one.refused);
    if (!entry || ended) return false;
    if (!entry.parcel) {
      await settle(entry, null);
      return true;
    }
    try {
      const answer = await client.call(entry.parcel.name, entry.parcel.input as never, {
        key: entry.key,
        as: entry.person,
      });
      await settle(entry, idIn(answer));
      return true;
    } catch (thrown) {
      const error = thrown instanceof RequestRefused ? thrown.reply : null;
      if (!error || mayComeLater(error)) return false;
      await replace({ ...entry, refused: error });
      await passOn(entry.key, null);
      return true;
    }
  }

  async function settle(entry: Entry, answered: number | null): Promise<void> {
    await passOn(entry.key, answered);
    await remove(entry.key);
  }

  /** Entries that waited for this one now know what to send. */
  async function passOn(key: string, answered: number | null): Promise<void> {
    for (const entry of state.entries.filter((one) => one.after?.key === key)) {
      const { after, ...rest } = entry;
      const parcel =
        after && answered !== null
          ? { name: after.parcel.name, input: { ...after.parcel.input, reading: answered } }
          : rest.parcel;
      await replace({ ...rest, parcel });
    }
  }

  async function run(): Promise<void> {
    await loaded;
    while (await sendFirst()) {
      // One at a time, in order.
    }
    clearTimeout(timer);
    if (!ended && state.entries.some((entry) => !entry.refused)) timer = setTimeout(() => void send(), AGAIN_MS);
  }
  function send(): Promise<void> {
    sending ??= oneSender(run).finally(() => {
      sending = null;
    });
    return sending;
  }

  const stopLink = client.onLink(() => {
    if (client.link().lostAt === null && state.entries.some((entry) => !entry.refused)) void send();
  });
  void send();

  return {
    state: () => state,
    onState(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async add(entry) {
      const order = Math.max(0, ...state.entries.map((one) => one.order)) + 1;
      const whole: Entry = { ...entry, order, person: client.link().person, at: now() };
      set({ entries: [...state.entries, whole] });
      await keep(storage.put(whole));
      await sending;
      await send();
    },
    drop: remove,
    send,
    end() {
      ended = true;
      clearTimeout(timer);
      stopLink();
    },
  };
}

/** No fault of the entry: the line is lost, the disk is full, or the person's sign-in has ended and they come back. */
const mayComeLater = (error: ReplyError): boolean =>
  error.kind === 'unavailable' || error.code === NOT_REACHED || error.code === 'host/nobody-signed-in';

/** The id in an answer: `{ reading }`, or the first of `{ readings }`. */
function idIn(answer: unknown): number | null {
  if (typeof answer !== 'object' || answer === null) return null;
  const { reading, readings } = answer as { reading?: unknown; readings?: unknown };
  const id = reading ?? (Array.isArray(readings) ? readings[0] : undefined);
  return typeof id === 'number' ? id : null;
}

/** Two tabs of one tablet share the list; where the browser can lock, only one of them sends. The keys guard the rest. */
async function oneSender(run: () => Promise<void>): Promise<void> {
  // Missing over plain http, though the types know it everywhere.
  const locks = navigator.locks as LockManager | null | undefined;
  if (!locks) return run();
  await locks.request('benchtag-outbox', run);
}
