import { describe, expect, it } from 'vitest';
import { measureOf } from '#core/kernel/measure-units.ts';
import { cutOffFor } from '#core/readings/compute/cut-off.ts';
import reference from '#tests/reference/surface-texture.json' with { type: 'json' };

const pm = (um: number) => measureOf(um.toString(), 'um');
const millimetre = 1_000_000;

describe('cutOffFor', () => {
  it.each(reference.lookup_cases)('Ra $Ra_um µm: $cut_off_mm mm (ISO 4288:1996 and ISO 21920-3, rows for Ra)', (it) => {
    expect(cutOffFor(pm(it.Ra_um))?.cutOff).toBe(it.cut_off_mm * millimetre);
  });

  it.each(reference.cases)('Ra $Ra_um µm: over $evaluation_mm mm (ISO 4288:1996, row of the table)', (it) => {
    const upTo = Number(it.Ra_um.split(' to ')[1]);

    expect(cutOffFor(pm(upTo))).toEqual({
      cutOff: it.cut_off_mm * millimetre,
      evaluation: it.evaluation_mm * millimetre,
    });
  });

  it('has nothing for no roughness, nor above the table', () => {
    expect([cutOffFor(0), cutOffFor(-1), cutOffFor(pm(80) + 1)]).toEqual([null, null, null]);
  });
});
