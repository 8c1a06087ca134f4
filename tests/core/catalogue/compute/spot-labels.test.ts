import { describe, expect, it } from 'vitest';
import { engineCylinder, engineLabel } from '#core/catalogue/compute/spot-labels.ts';

const SIX = 'L:1,2,3 R:4,5,6';
const EIGHT = 'L:1,3,5,7 R:2,4,6,8';

describe('engineLabel', () => {
  it.each([
    ['3E2', 3, 'right', SIX, '6E2'],
    ['1I1', 1, 'left', SIX, '1I1'],
    ['2E', 2, 'right', EIGHT, '4E'],
    ['C3', 3, 'right', EIGHT, 'C6'],
    ['2E', 2, 'single', '1,2,3,4', '2E'],
    ['2E', 2, 'not_known', EIGHT, '2E'],
    ['2E', 2, 'right', null, '2E'],
  ] as const)('%s of cylinder %d on the %s head', (label, cylinder, position, numbering, expected) => {
    expect(engineLabel({ kind: 'valve', label, cylinder }, { kind: 'head', position }, numbering)).toBe(expected);
  });

  it('leaves a block alone: it counts the engine already', () => {
    const spot = { kind: 'cylinder', label: '3', cylinder: 3 };

    expect(engineLabel(spot, { kind: 'block', position: 'right' }, EIGHT)).toBe('3');
  });
});

describe('engineCylinder', () => {
  it('keeps the casting’s own number past the end of the bank', () => {
    expect(engineCylinder(9, EIGHT, 'right')).toBe(9);
  });
});
