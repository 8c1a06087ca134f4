import { describe, expect, it, vi } from 'vitest';
import type { Client, Link } from '#renderer/client/client.ts';
import { createOutbox, type NewEntry, type OutboxStorage } from '#renderer/client/outbox.ts';
import { memoryStorage } from '#renderer/client/outbox-storage.ts';
import { notReached, RequestRefused } from '#renderer/client/request-refused.ts';

type Sent = Readonly<{ name: string; input: unknown; key: string | undefined; as: number | null | undefined }>;

/** A client that answers as told and remembers what was sent. */
function fakeClient(answer: (sent: Sent) => unknown) {
  const sent: Sent[] = [];
  let link: Link = { keptAt: null, lostAt: null, person: 7 };
  const listeners = new Set<() => void>();
  const client = {
    now: () => '2026-03-09T14:00:00.000Z',
    link: () => link,
    onLink: (listener: () => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    call: (name: string, input: unknown, options: { key?: string; as?: number | null }) => {
      const one = { name, input, key: options.key, as: options.as };
      sent.push(one);
      return new Promise((resolve) => resolve(answer(one)));
    },
  } as unknown as Client;
  const setLink = (change: Partial<Link>) => {
    link = { ...link, ...change };
    for (const listener of listeners) listener();
  };
  return { client, sent, setLink };
}

const reading = (key: string, typed: string, place = key): NewEntry => ({
  key,
  parcel: { name: 'readings/add-readings', input: { rows: [{ typed }] } },
  place,
  shown: typed,
});
const typedOf = (sent: readonly Sent[]) =>
  sent.map((one) => (one.input as { rows: { typed: string }[] }).rows[0]?.typed);
const refusal = new RequestRefused({
  kind: 'invalid-input',
  code: 'readings/ask',
  message: '30 can be read two ways.',
});

describe('createOutbox', () => {
  it('sends in the order of entering, one at a time, each under its own key and as the person who entered it', async () => {
    const { client, sent } = fakeClient(() => ({ readings: [1] }));
    const outbox = createOutbox(client, memoryStorage());
    await Promise.all([
      outbox.add(reading('k1', '35.12')),
      outbox.add(reading('k2', '35.46')),
      outbox.add(reading('k3', '35.88')),
    ]);
    expect(typedOf(sent)).toEqual(['35.12', '35.46', '35.88']);
    expect(sent.map((one) => one.key)).toEqual(['k1', 'k2', 'k3']);
    expect(sent.every((one) => one.as === 7)).toBe(true);
    expect(outbox.state().entries).toEqual([]);
    outbox.end();
  });

  it('keeps everything while the host is away and sends it once when the line is back', async () => {
    let away = true;
    const { client, sent, setLink } = fakeClient(() => {
      if (away) throw notReached();
      return { readings: [1] };
    });
    const storage = memoryStorage();
    const outbox = createOutbox(client, storage);
    await outbox.add(reading('k1', '35.12'));
    await outbox.add(reading('k2', '35.46'));
    expect(outbox.state().entries.map((entry) => entry.shown)).toEqual(['35.12', '35.46']);
    expect(await storage.list()).toHaveLength(2);
    away = false;
    sent.length = 0;
    setLink({ lostAt: null });
    await vi.waitFor(() => expect(outbox.state().entries).toEqual([]));
    expect(sent.map((one) => one.key)).toEqual(['k1', 'k2']);
    expect(await storage.list()).toEqual([]);
    outbox.end();
  });

  it('sends after a reload what was entered before it, with the same key', async () => {
    const storage = memoryStorage();
    const before = fakeClient(() => {
      throw notReached();
    });
    const first = createOutbox(before.client, storage);
    await first.add(reading('k1', '35.12'));
    first.end();
    const after = fakeClient(() => ({ readings: [1] }));
    const second = createOutbox(after.client, storage);
    await vi.waitFor(() => expect(second.state()).toMatchObject({ ready: true, entries: [] }));
    expect(after.sent.map((one) => one.key)).toEqual(['k1']);
    second.end();
  });

  it('sets a refused entry aside with its reason and goes on with the next', async () => {
    const { client } = fakeClient((one) => {
      if (one.key === 'k1') throw refusal;
      return { readings: [2] };
    });
    const outbox = createOutbox(client, memoryStorage());
    await outbox.add(reading('k1', '30'));
    await outbox.add(reading('k2', '35.46'));
    expect(outbox.state().entries).toMatchObject([{ key: 'k1', shown: '30', refused: { code: 'readings/ask' } }]);
    await outbox.drop('k1');
    expect(outbox.state().entries).toEqual([]);
    outbox.end();
  });

  const correction: NewEntry = {
    ...reading('k2', '35.46'),
    after: { key: 'k1', parcel: { name: 'readings/supersede-reading', input: { typed: '35.46' } } },
  };

  it('turns a correction typed before the first reading was sent into one that supersedes it', async () => {
    let away = true;
    const { client, sent } = fakeClient(() => {
      if (away) throw notReached();
      return { readings: [41] };
    });
    const outbox = createOutbox(client, memoryStorage());
    await outbox.add(reading('k1', '35.12'));
    await outbox.add(correction);
    away = false;
    await outbox.send();
    expect(sent.at(-1)).toMatchObject({
      name: 'readings/supersede-reading',
      input: { reading: 41, typed: '35.46' },
      key: 'k2',
    });
    outbox.end();
  });

  it('sends the correction as a reading of its own when the first one was refused', async () => {
    const { client, sent } = fakeClient((one) => {
      if (one.key === 'k1') throw refusal;
      return { readings: [2] };
    });
    const storage = memoryStorage([
      { ...reading('k1', '30'), order: 1, person: 7, at: '' },
      { ...correction, order: 2, person: 7, at: '' },
    ]);
    const outbox = createOutbox(client, storage);
    await vi.waitFor(() => expect(sent).toHaveLength(2));
    expect(sent[1]).toMatchObject({ name: 'readings/add-readings', key: 'k2' });
    outbox.end();
  });

  it('goes on and says so when this tablet keeps nothing', async () => {
    const { client, sent } = fakeClient(() => ({ readings: [1] }));
    const shut: OutboxStorage = {
      list: () => Promise.reject(new Error('shut')),
      put: () => Promise.reject(new Error('shut')),
      remove: () => Promise.reject(new Error('shut')),
    };
    const outbox = createOutbox(client, shut);
    await outbox.add(reading('k1', '35.12'));
    expect(sent).toHaveLength(1);
    expect(outbox.state().fragile).toBe(true);
    outbox.end();
  });
});
