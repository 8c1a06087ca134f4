import { describe, expect, it } from 'vitest';
import { faceOfTable, isSurveyed } from '#renderer/screens/bench/deck-faces.ts';

describe('isSurveyed', () => {
  it('is true of what has a flat face', () => {
    const kinds = ['head', 'block', 'intake_manifold', 'exhaust_manifold', 'crank', 'rod_set', 'flywheel'];
    expect(kinds.filter(isSurveyed)).toEqual(['head', 'block', 'intake_manifold', 'exhaust_manifold']);
  });
});

describe('faceOfTable', () => {
  it.each([
    ['head', 'surface', 'deck'],
    ['head', 'head-faces', 'intake-face'],
    ['intake_manifold', 'intake-faces', 'intake-face'],
    ['block', 'block-faces', undefined],
    ['head', 'heights', null],
    ['block', 'surface', null],
  ])('%s, table %s: %s', (kind, table, face) => {
    expect(faceOfTable(kind, table)).toBe(face);
  });
});
