import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';

describe('dispatch', () => {
  it.each(['toString', '__proto__', 'tickets/no-such-thing', ''])('answers an unknown name in words: %s', async (name) => {
    const { ask } = await startTestHost();

    expect(await ask(name, {})).toMatchObject({ ok: false, error: { kind: 'not-found', code: 'host/unknown-request' } });
  });
});
