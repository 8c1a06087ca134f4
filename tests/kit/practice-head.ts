/** Facts of a head of the practice shop, from its data files, without a database. */
import type { Stage } from '#core/catalogue/compute/bench-table.ts';
import { id } from '#core/kernel/ids.ts';
import { isUnitCode, type UnitCode } from '#core/kernel/measure-units.ts';
import type { Facts, Limit, Spot } from '#core/readings/compute/model.ts';
import file from '#demo-data/casting-types.json' with { type: 'json' };
import { factsOf, limitOf, readingOf } from '#tests/kit/bench-facts.ts';

type Size = Readonly<{ value: string; unit: string }>;
type Head = Readonly<{
  code: string;
  material: string;
  spots: readonly Readonly<{
    kind: string;
    label: string;
    benchOrder: number;
    row: number;
    cylinder: number | null;
    side: string;
  }>[];
  limits: readonly Readonly<{
    quantity: string;
    stage: string;
    side: string;
    low: string | null;
    high: string | null;
    target: string | null;
    unit: string;
  }>[];
  springs: Readonly<{
    installedHeight: Size;
    loads: readonly Readonly<{ force: string; at: string }>[];
    forceUnit: string;
    solidHeight: Size;
    lift: Size;
    sealGapStatic: Size;
  }>;
}>;

const unitOf = (text: string): UnitCode => {
  if (!isUnitCode(text)) throw new Error(`no unit: ${text}`);
  return text;
};

function springTargets({ springs }: Head): Limit[] {
  const aim = (quantity: string, target: string, unit: string) =>
    limitOf(quantity, unitOf(unit), { target, stage: 'before' });
  const unit = springs.installedHeight.unit;
  return [
    ...springs.loads.flatMap((point, index) => [
      aim(`spring-load-${index + 1}`, point.force, springs.forceUnit),
      aim(`spring-height-${index + 1}`, point.at, unit),
    ]),
    aim('solid-height', springs.solidHeight.value, springs.solidHeight.unit),
    aim('valve-lift', springs.lift.value, springs.lift.unit),
    aim('seal-gap', springs.sealGapStatic.value, springs.sealGapStatic.unit),
  ];
}

/** A head by its type code with `heights` read before, by valve label. */
export function practiceHead(code: string, heights: Readonly<Record<string, string>> = {}): Facts {
  const head = file.castingTypes.find((type) => type.code === code) as unknown as Head;
  const spots = head.spots.map(
    (spot, index): Spot => ({
      ...(spot as Pick<Spot, 'kind' | 'label' | 'benchOrder' | 'row' | 'cylinder'>),
      id: id<'spot'>(index + 1),
      bank: 'none',
      side: spot.side === 'I' || spot.side === 'E' ? spot.side : null,
    }),
  );
  const unit = unitOf(head.springs.installedHeight.unit);
  const plain = factsOf();
  return {
    ...plain,
    casting: { ...plain.casting, typeCode: code, material: head.material },
    spots,
    limits: [
      ...head.limits.map((limit) =>
        limitOf(limit.quantity, unitOf(limit.unit), {
          ...limit,
          unit: unitOf(limit.unit),
          stage: limit.stage as Stage,
          side: limit.side as Limit['side'],
        }),
      ),
      ...springTargets(head),
    ],
    readings: Object.entries(heights).map(([label, typed]) =>
      readingOf('installed-height', typed, unit, {
        stage: 'before',
        spot: spots.find((spot) => spot.kind === 'valve' && spot.label === label)?.id ?? null,
      }),
    ),
  };
}
