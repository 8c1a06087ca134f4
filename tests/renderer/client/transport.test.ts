import { describe, expect, it, vi } from 'vitest';
import { bridgeTransport, httpTransport, putFile, readAnnouncement } from '#renderer/client/transport.ts';

const answering = (body: string, init?: ResponseInit) =>
  vi.fn(async () => new Response(body, init)) as unknown as typeof fetch;

describe('httpTransport', () => {
  it("posts JSON to the page's own origin with its cookies", async () => {
    const send = answering('{"ok":true,"output":1,"touched":[],"at":""}');

    const reply = await httpTransport(send).call({ name: 'shop/get-face', input: { a: 'ł' } });

    expect(reply).toMatchObject({ ok: true, output: 1 });
    expect(send).toHaveBeenCalledWith('./call', {
      credentials: 'same-origin',
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{"name":"shop/get-face","input":{"a":"ł"}}',
    });
  });

  it.each([
    ['nothing answers', vi.fn(async () => Promise.reject(new TypeError('fetch failed'))), 'client/not-reached'],
    ['a page of something between', answering('<html>log in to the Wi-Fi</html>'), 'client/not-understood'],
    ['JSON that is no reply', answering('[]'), 'client/not-understood'],
  ])('refuses in words when %s', async (_, send, code) => {
    const call = httpTransport(send as unknown as typeof fetch).call({ name: 'shop/get-face', input: {} });

    await expect(call).rejects.toMatchObject({ reply: { code, kind: 'unavailable' } });
  });
});

describe('bridgeTransport', () => {
  it("says the same when the window's bridge is broken", async () => {
    const bridge = { call: async () => Promise.reject(new Error('gone')), onChange: () => () => undefined };

    await expect(bridgeTransport(bridge).call({ name: 'x', input: {} })).rejects.toMatchObject({
      reply: { code: 'client/not-reached' },
    });
  });
});

describe('putFile', () => {
  it('returns what the host kept, and throws its refusal', async () => {
    const kept = { sha256: 'ab', bytes: 3, mime: 'image/png', width: 1, height: 1 };
    const good = answering(JSON.stringify({ ok: true, output: kept, touched: [], at: '' }));
    const bad = answering(
      JSON.stringify({ ok: false, error: { kind: 'invalid-input', code: 'files/no-picture', message: 'No picture.' } }),
      { status: 400 },
    );

    await expect(putFile(new Blob(['abc'], { type: 'image/png' }), good)).resolves.toEqual(kept);
    await expect(putFile(new Blob(['abc']), bad)).rejects.toMatchObject({ reply: { code: 'files/no-picture' } });
  });
});

describe('readAnnouncement', () => {
  it('reads what the host tells and leaves a heartbeat', () => {
    expect(readAnnouncement('{"name":"a/b","touched":[1]}')).toEqual({ name: 'a/b', touched: [1] });
    expect(readAnnouncement('beat')).toBeUndefined();
    expect(readAnnouncement('null')).toBeUndefined();
  });
});
