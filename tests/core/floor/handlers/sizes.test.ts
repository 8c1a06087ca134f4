import { describe, expect, it } from 'vitest';
import { startTestHost } from '#tests/kit/test-host.ts';
import { benchOf, checkIn } from '../builders.ts';

describe('sizesOf', () => {
  it('is empty when nothing the work reads is judged', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['hot-tank'] });
    expect((await benchOf(host, job)).sizes).toEqual([]);
  });

  it('names intake and exhaust apart where they are judged apart, each line once', async () => {
    const host = await startTestHost();
    const job = await checkIn(host, { operations: ['guide-size', 'seat-cut'] });
    const { sizes } = await benchOf(host, job);
    const lines = sizes.map((size) => `${size.words} ${size.text}`);
    expect(new Set(lines).size).toBe(lines.length);
    expect(lines.some((text) => text.includes('intake'))).toBe(true);
    expect(lines.some((text) => text.includes('exhaust'))).toBe(true);
  });
});
