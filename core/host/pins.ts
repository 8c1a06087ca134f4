/**
 * PINs are kept as a salted scrypt hash (RFC 7914, r 8, p 1). A short PIN has few values: the brake on tries protects it,
 * the hash only makes a stolen file slow to search.
 */
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import type { Services } from './services.ts';

/** About 0.2 s on a small PC. */
const COST = 2 ** 15;
const BLOCK = 8;
const LENGTH = 32;

const derive = (pin: string, salt: Buffer, cost: number): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    // Without its own ceiling Node refuses costs of 2^15 and more.
    scrypt(pin, salt, LENGTH, { N: cost, r: BLOCK, p: 1, maxmem: 256 * cost * BLOCK }, (error, key) =>
      error ? reject(error) : resolve(key),
    );
  });

/**
 * Hash and check PINs.
 *
 * @param cost scrypt's N, a power of two; tests use a small one
 */
export function makePins(cost: number = COST): Services['pins'] {
  return {
    async hash(pin) {
      const salt = randomBytes(16);
      const key = await derive(pin, salt, cost);
      return ['scrypt', cost, salt.toString('hex'), key.toString('hex')].join('$');
    },
    async matches(pin, hash) {
      const [kind, kept, salt, key] = hash.split('$');
      if (kind !== 'scrypt' || !kept || !salt || !key) return false;
      const made = await derive(pin, Buffer.from(salt, 'hex'), Number(kept));
      return timingSafeEqual(made, Buffer.from(key, 'hex'));
    },
  };
}
