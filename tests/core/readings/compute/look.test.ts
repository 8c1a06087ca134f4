import { describe, expect, it } from 'vitest';
import { fromSheet, made, unknown } from '#core/readings/compute/look.ts';

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
