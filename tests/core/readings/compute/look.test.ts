import { describe, expect, it } from 'vitest';
import { fromSheet, made, madeBy, unknown } from '#core/readings/compute/look.ts';

describe('made', () => {
  const read = { value: 100, uncertainty: 3, marks: ['read on the cup'], planned: false };

  it('combines doubts and keeps small print once', () => {
    const both = made([read, { ...read, uncertainty: 4 }], 7, ['calculated']);

    expect(both).toEqual({ value: 7, uncertainty: 5, marks: ['read on the cup', 'calculated'], planned: false });
  });

  it('has no doubt to state where one part has none to state, and stays planned', () => {
    expect(made([read, { ...read, uncertainty: null }], 7).uncertainty).toBeNull();
    expect(made([], 7).uncertainty).toBeNull();
    expect(made([read, { ...read, planned: true }], 7).planned).toBe(true);
  });
});

describe('fromSheet, unknown', () => {
  it('a figure of a sheet has no doubt of a gauge; what cannot be said tells why', () => {
    expect(fromSheet(5, 'lift from the sheet')).toMatchObject({ value: 5, uncertainty: 0 });
    expect(unknown('measure the cup')).toMatchObject({ value: null, marks: ['measure the cup'] });
  });
});

describe('madeBy', () => {
  it('weighs each doubt with the slope at its part: 3 x 2 and 4 x 2 make 10 (exact arithmetic)', () => {
    const [one, two] = [3, 4].map((uncertainty) => ({ value: 1, uncertainty, marks: [], planned: false }));

    expect(
      madeBy(
        [
          [one ?? null, 2],
          [two ?? null, -2],
        ],
        7,
      ).uncertainty,
    ).toBe(10);
  });
});
