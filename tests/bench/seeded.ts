/**
 * The seeded choices of the volume recipe: a text names a stream, FNV-1a 32 makes its seed, mulberry32 its numbers, integer
 * weights choose. The test vector stands in demo-data/volume.json.
 */

/** FNV-1a, 32 bit, over UTF-8. Source: the public FNV specification (offset 2166136261, prime 16777619). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 0x01000193);
  return hash >>> 0;
}

export type Stream = Readonly<{
  /** The next whole number, 0 to 2^32 - 1. */
  next(): number;
  /** One of a list by whole-number weights, walked in the order written. */
  pick<T>(weighted: readonly (readonly [value: T, weight: number])[]): T;
  /** A whole number from 0 to below `n`. */
  below(n: number): number;
}>;

/** mulberry32 in 32-bit unsigned arithmetic. */
export function openStream(name: string): Stream {
  let state = seedOf(name);
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (t ^ (t >>> 14)) >>> 0;
  };
  const below = (n: number): number => Number((BigInt(next()) * BigInt(n)) >> 32n);
  return {
    next,
    below,
    pick(weighted) {
      const total = weighted.reduce((sum, [, weight]) => sum + weight, 0);
      let left = below(total);
      for (const [value, weight] of weighted) {
        if (left < weight) return value;
        left -= weight;
      }
      throw new RangeError('nothing to choose from');
    },
  };
}
