import { describe, expect, it } from 'vitest';
import { foundTypes } from '#renderer/screens/counter/check-in/find-type.ts';

const type = (code: string, name: string, castingNumberPattern: string | null = null) => ({
  code,
  name,
  castingNumberPattern,
  engineType: { words: 'vee six' },
});
const types = [
  type('NV-8', 'iron head, NV-8'),
  type('BV-6', 'BV-6 aluminium twin-cam', '4B?71'),
  type('ZB-1', 'Żółw block'),
];

describe('foundTypes', () => {
  it.each([
    ['bv', ['BV-6']],
    ['ALU twin', ['BV-6']],
    ['4b?71', ['BV-6']],
    ['zolw', ['ZB-1']],
    ['vee  six head', ['NV-8']],
    ['', []],
    ['no such thing', []],
  ])('%s', (text, codes) => {
    expect(foundTypes(types, text).map((one) => one.code)).toEqual(codes);
  });
});
