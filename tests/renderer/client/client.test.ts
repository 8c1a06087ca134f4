import { describe, expect, it, vi } from 'vitest';
import { createClient, newKey } from '#renderer/client/client.ts';
import { notReached, RequestRefused } from '#renderer/client/request-refused.ts';
import type { Transport } from '#renderer/client/transport.ts';
import type { Announcement, Reply, Request } from '#renderer/client/wire.ts';

const ok = (output: unknown, touched: number[] = [], at = '2026-03-09T14:00:00.000Z'): Reply => ({
  ok: true,
  output,
  touched,
  at,
});

function wire(answer: (request: Request) => Promise<Reply>) {
  const sent: Request[] = [];
  const hear: { change?: (what: Announcement) => void; link?: (there: boolean) => void } = {};
  const transport: Transport = {
    call: (request) => {
      sent.push(request);
      return answer(request);
    },
    listen: (change, link) => {
      hear.change = change;
      hear.link = link;
      return () => undefined;
    },
  };
  return { transport, sent, hear };
}

describe('createClient', () => {
  it('sends a query without a key and a command with a key of its own', async () => {
    const { transport, sent } = wire(async () => ok({}));
    const client = createClient(transport);

    await client.call('shop/get-face', {});
    await client.call('staff/sign-out', {});
    await client.call('staff/sign-out', {});

    expect(sent[0]).toEqual({ name: 'shop/get-face', input: {} });
    expect(sent[1]?.key).toMatch(/^[0-9a-f]{32}$/);
    expect(sent[2]?.key).not.toBe(sent[1]?.key);
  });

  it('names the person who acts from then on', async () => {
    const { transport, sent } = wire(async () => ok({}));
    const client = createClient(transport);

    client.actAs(7);
    await client.call('shop/get-face', {});

    expect(sent[0]).toMatchObject({ as: 7 });
  });

  it('throws the refusal as the host said it', async () => {
    const refusal = {
      kind: 'rule-broken',
      code: 'shop/somewhat',
      message: 'Not so.',
      fields: { name: 'Write it.' },
    } as const;
    const { transport } = wire(async () => ({ ok: false, error: refusal }));
    const client = createClient(transport);

    const call = client.call('staff/sign-out', {});

    await expect(call).rejects.toBeInstanceOf(RequestRefused);
    await expect(call).rejects.toMatchObject({ reply: refusal });
  });

  it('says since when it was kept, and tells which tickets were touched', async () => {
    const { transport } = wire(async () => ok({}, [4, 9], '2026-03-09T14:02:03.000Z'));
    const client = createClient(transport);
    const heard = vi.fn();
    client.onChange(heard);

    await client.call('staff/sign-out', {});

    expect(client.link().keptAt).toBe('2026-03-09T14:02:03.000Z');
    expect(heard).toHaveBeenCalledWith({ name: 'staff/sign-out', touched: [4, 9] });
  });

  it('says that the host is lost, and has everything asked again when it is found', async () => {
    const { transport, hear } = wire(async () => Promise.reject(notReached()));
    const client = createClient(transport);
    const heard = vi.fn();
    client.onChange(heard);

    await expect(client.call('shop/get-face', {})).rejects.toMatchObject({ reply: { code: 'client/not-reached' } });
    const lostAt = client.link().lostAt;
    hear.link?.(true);

    expect(lostAt).not.toBeNull();
    expect(client.link().lostAt).toBeNull();
    expect(heard).toHaveBeenCalledWith({ name: 'client/found-again', touched: [] });
  });

  it('shows the time of the host, not of this machine', async () => {
    const { transport } = wire(async () => ok({}, [], '2027-05-14T09:00:00.000Z'));
    const client = createClient(transport);

    await client.call('shop/get-face', {});

    expect(client.now().slice(0, 16)).toBe('2027-05-14T09:00');
  });
});

describe('newKey', () => {
  it('needs no randomUUID, which a page over plain http lacks', () => {
    vi.stubGlobal('crypto', { getRandomValues: (bytes: Uint8Array) => bytes.fill(171) });

    expect(newKey()).toBe('ab'.repeat(16));
    vi.unstubAllGlobals();
  });
});
