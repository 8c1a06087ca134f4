import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openStream, seedOf } from '#tests/bench/seeded.ts';

type Vector = Readonly<{ text: string; seed: number; u32: readonly number[] }>;
const { testVector } = JSON.parse(readFileSync(new URL('../../demo-data/volume.json', import.meta.url), 'utf8')) as {
  testVector: Vector;
};

describe('openStream', () => {
  it('gives the test vector of the recipe (computed in two languages)', () => {
    const stream = openStream(testVector.text);

    expect(seedOf(testVector.text)).toBe(testVector.seed);
    expect(testVector.u32.map(() => stream.next())).toEqual(testVector.u32);
  });
});
