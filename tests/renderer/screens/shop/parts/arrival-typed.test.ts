import { describe, expect, it } from 'vitest';
import { catalogueContract } from '#core/catalogue/contract.ts';
import {
  arrivalInput,
  type CastingType,
  emptyArrival,
  startArrival,
} from '#renderer/screens/shop/parts/arrival-typed.ts';

const type = {
  arrival: [
    {
      id: 1,
      words: 'cam caps',
      expected: 10,
      mixRule: 'own_place',
      removeBeforeWash: false,
      inside: false,
      containerHint: 'board',
    },
    {
      id: 2,
      words: 'dowels',
      expected: null,
      mixRule: 'none',
      removeBeforeWash: true,
      inside: true,
      containerHint: null,
    },
  ],
} as unknown as CastingType;

describe('arrivalInput', () => {
  it('gives back the list it started from, and leaves out a line without words', () => {
    const items = arrivalInput([...startArrival(type), emptyArrival('new')]);

    expect(items).toEqual(type.arrival.map(({ id: _, ...rest }) => rest));
    expect(
      catalogueContract['operations/set-arrival-template'].input.safeParse({ castingType: 1, items }).error,
    ).toBeUndefined();
  });
});
