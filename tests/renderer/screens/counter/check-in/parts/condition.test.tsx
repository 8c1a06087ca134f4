import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { Condition } from '#renderer/screens/counter/check-in/parts/condition.tsx';
import { type CastingTyped, EMPTY_CHECK_IN, emptyCasting } from '#renderer/screens/counter/check-in/typed.ts';
import { showBench } from '../../../bench/around.tsx';

afterEach(cleanup);

const spot = (label: string, cylinder: number, order: number) => ({
  id: order,
  kind: 'valve',
  label,
  benchOrder: order,
  row: 1,
  bank: 'none',
  cylinder,
  side: label.endsWith('E') ? 'E' : 'I',
});
const TYPE = {
  id: 5,
  kind: 'head',
  counts: { cylinders: 2 },
  waterJacket: true,
  numbering: 'L:1,3 R:2,4',
  spots: [spot('1E', 1, 1), spot('1I', 1, 2), spot('2I', 2, 3), spot('2E', 2, 4)],
  arrival: [],
};

function drawn(position: CastingTyped['position']) {
  const casting: CastingTyped = { ...emptyCasting('k1'), typeId: 5, kind: 'head', position };
  showBench(<Condition typed={{ ...EMPTY_CHECK_IN, castings: [casting] }} casting={casting} change={() => {}} />, {
    'operations/get-casting-type': TYPE,
    'operations/list-conditions': { conditions: [] },
  });
  const picture = () => screen.getByRole('img', { name: /deck up/ });
  return waitFor(picture);
}

describe('Condition', () => {
  it.each([
    ['right', ['2E', '2I', '4I', '4E'], ['2', '4']],
    ['left', ['1E', '1I', '3I', '3E'], ['1', '3']],
    [null, ['1E', '1I', '2I', '2E'], ['1', '2']],
  ] as const)(
    'calls valves and cylinders of a head in the %s bank as the engine counts',
    async (position, valves, cylinders) => {
      const texts = [...(await drawn(position)).querySelectorAll('text')].map((text) => text.textContent ?? '');
      expect(texts.filter((text) => /^\d[IE]$/.test(text))).toEqual(valves);
      expect(texts.filter((text) => /^\d$/.test(text))).toEqual(cylinders);
    },
  );
});
