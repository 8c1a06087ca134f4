import { describe, expect, it } from 'vitest';
import { measureOf, type UnitCode } from '#core/kernel/measure-units.ts';
import { type Band, fitRangeOf, outside, oversized } from '#core/readings/compute/fit-range.ts';
import reference from '#tests/reference/heat-and-fits.json' with { type: 'json' };

const bandOf = (pair: readonly number[], unit: UnitCode): Band => {
  const [low = 0, high = 0] = pair.map((it) => measureOf(it.toFixed(4), unit));
  return { low, high };
};

describe('fitRangeOf', () => {
  it.each(reference.fit_from_sizes_cases)('$id: $kind, clearance $clearance_min_max ($source)', (it) => {
    const unit = it.unit as UnitCode;
    const range = fitRangeOf(bandOf(it.hole, unit), bandOf(it.shaft, unit));

    expect([-range.tightest, -range.loosest].map((at) => (at === 0 ? 0 : at))).toEqual(
      it.clearance_min_max.map((clearance) => measureOf(clearance.toFixed(4), unit)),
    );
    expect(range.kind).toBe(it.kind);
  });

  it('intake insert 1.6445-1.6455 in 1.6415-1.6425: 0.002 to 0.004 in tight (TM 5-6115-400-35, Table 2.1)', () => {
    const range = fitRangeOf(bandOf([1.6415, 1.6425], 'in'), bandOf([1.6445, 1.6455], 'in'));

    expect(range).toEqual({
      tightest: measureOf('0.004', 'in'),
      loosest: measureOf('0.002', 'in'),
      kind: 'interference',
    });
  });

  it('exhaust insert 1.6105-1.6110 in 1.6075-1.6085: 0.0020 to 0.0035 in tight (TM 5-6115-400-35, Table 2.1)', () => {
    const range = fitRangeOf(bandOf([1.6075, 1.6085], 'in'), bandOf([1.6105, 1.611], 'in'));

    expect([range.loosest, range.tightest]).toEqual([measureOf('0.0020', 'in'), measureOf('0.0035', 'in')]);
  });
});

describe('oversized', () => {
  it.each(reference.size_series_cases)(
    '$id: agrees with the printed series: $agrees (army manuals, by number)',
    (it) => {
      const unit = it.unit as UnitCode;
      const made = oversized(bandOf(it.standard, unit), -measureOf(it.undersize.toFixed(4), unit));
      const printed = bandOf(it.printed, unit);

      expect(made.low === printed.low && made.high === printed.high).toBe(it.agrees);
    },
  );
});

describe('outside', () => {
  it('says how far beyond which end a size lies, and nothing within, ends included (exact arithmetic)', () => {
    const band = { low: 100, high: 200 };

    expect([90, 100, 150, 200, 230].map((size) => outside(size, band))).toEqual([-10, 0, 0, 0, 30]);
  });
});
