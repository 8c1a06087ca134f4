/**
 * The places on a casting that is only described by its counts, front to back. Pure.
 *
 * Two valves a cylinder stand in one row (`E I`, mirrored so that like valves meet: common practice, no source); more stand
 * in two rows, intake first. Labels count the casting's own cylinders from its front: `3E1`.
 */
type Counts = Readonly<Partial<Record<string, number>>>;
type Side = 'I' | 'E';
export type DescribedSpot = Readonly<{
  kind: 'valve' | 'cylinder' | 'chamber' | 'main' | 'journal' | 'deck_corner';
  label: string;
  benchOrder: number;
  row: number;
  bank: 'none';
  cylinder: number | null;
  side: Side | null;
}>;

const numbered = (kind: DescribedSpot['kind'], count: number, prefix = '', hasCylinder = true): DescribedSpot[] =>
  Array.from({ length: count }, (_, i) => ({
    kind,
    label: `${prefix}${i + 1}`,
    benchOrder: i + 1,
    row: 1,
    bank: 'none',
    cylinder: hasCylinder ? i + 1 : null,
    side: null,
  }));

/** The spots of a head or block from its counts; none for castings without places. */
export function spotsFromCounts(kind: string, counts: Counts): DescribedSpot[] {
  const cylinders = counts.cylinders ?? 0;
  if (kind === 'head')
    return [...valveSpots(cylinders, counts), ...numbered('chamber', counts.chambers ?? 0), ...deckCorners()];
  if (kind === 'block')
    return [...numbered('cylinder', cylinders), ...numbered('main', counts.mains ?? 0, 'M', false), ...deckCorners()];
  if (kind === 'crank')
    return [...numbered('main', counts.mains ?? 0, 'M', false), ...numbered('journal', counts.pins ?? 0, 'P', false)];
  return [];
}

const deckCorners = (): DescribedSpot[] =>
  ['FI', 'FE', 'RI', 'RE'].map((label, i) => ({
    kind: 'deck_corner',
    label,
    benchOrder: i + 1,
    row: 1,
    bank: 'none',
    cylinder: null,
    side: null,
  }));

function valveSpots(cylinders: number, counts: Counts): DescribedSpot[] {
  const intake = counts.intake_valves ?? 0;
  const exhaust = counts.exhaust_valves ?? 0;
  if (cylinders === 0 || intake + exhaust === 0) return [];
  if (intake === cylinders && exhaust === cylinders) return oneRow(cylinders);
  return [...row('I', 1, cylinders, intake), ...row('E', 2, cylinders, exhaust)];
}

function oneRow(cylinders: number): DescribedSpot[] {
  const spots: DescribedSpot[] = [];
  for (let cylinder = 1; cylinder <= cylinders; cylinder += 1) {
    const order: Side[] = cylinder % 2 === 1 ? ['E', 'I'] : ['I', 'E'];
    for (const side of order) {
      spots.push({
        kind: 'valve',
        label: `${cylinder}${side}`,
        benchOrder: spots.length + 1,
        row: 1,
        bank: 'none',
        cylinder,
        side,
      });
    }
  }
  return spots;
}

/** Valves of one side share the cylinders evenly; what is left over goes to the first cylinders. */
function row(side: Side, rowNo: number, cylinders: number, valves: number): DescribedSpot[] {
  const spots: DescribedSpot[] = [];
  for (let cylinder = 1; cylinder <= cylinders; cylinder += 1) {
    const here = Math.floor(valves / cylinders) + (cylinder <= valves % cylinders ? 1 : 0);
    for (let n = 1; n <= here; n += 1) {
      const label = here === 1 ? `${cylinder}${side}` : `${cylinder}${side}${n}`;
      spots.push({ kind: 'valve', label, benchOrder: spots.length + 1, row: rowNo, bank: 'none', cylinder, side });
    }
  }
  return spots;
}
