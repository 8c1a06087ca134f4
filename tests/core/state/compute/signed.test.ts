import { describe, expect, it } from 'vitest';
import { know } from '#core/state/compute/live.ts';
import { isSigned, signaturesNeeded, signaturesOf } from '#core/state/compute/signed.ts';
import { at, factsOf, operation, signature } from '../builders.ts';

const knownOf = (wanted: Parameters<typeof factsOf>[0]) => know(factsOf(wanted));

describe('signaturesNeeded', () => {
  it('is two only for done work that asks for two', () => {
    const two = (finishedAt: ReturnType<typeof at> | null) => [operation(1, { twoSignatures: true, finishedAt })];
    expect(signaturesNeeded(knownOf({ operations: two(null) }), 1)).toBe(1);
    expect(signaturesNeeded(knownOf({ operations: two(at(1)) }), 1)).toBe(2);
  });
});

describe('signaturesOf', () => {
  it('leaves out what was reopened', () => {
    const known = knownOf({ signOffs: [signature({ reopened: true }), signature({ id: 2 })] });
    expect(signaturesOf(known, 1).map((s) => s.id)).toEqual([2]);
  });
});

describe('isSigned', () => {
  it('needs the first place, and the second where two are asked', () => {
    expect(isSigned(knownOf({ signOffs: [signature({ place: 'second' })] }), 1)).toBe(false);
    const two = { operations: [operation(1, { twoSignatures: true, finishedAt: at(1) })] };
    expect(isSigned(knownOf({ ...two, signOffs: [signature()] }), 1)).toBe(false);
    expect(isSigned(knownOf({ ...two, signOffs: [signature(), signature({ id: 2, place: 'second' })] }), 1)).toBe(true);
  });
});
