/**
 * The places on a casting that is only described by its counts, front to back. Pure.
 *
 * Two valves a cylinder stand in one row (`E I`, mirrored so that like valves meet: common practice, no source); more stand
 * in two rows, intake first. Labels count the casting's own cylinders from its front: `3E1`.
 */
type Counts = Readonly<Partial<Record<string, number>>>;
type Side = 'I' | 'E';
export type DescribedSpot = Readonly<{
  kind: 'valve' | 'port' | 'cylinder' | 'chamber' | 'cam_journal' | 'main' | 'journal' | 'rod' | 'deck_corner';
  label: string;
  benchOrder: number;
  row: number;
  bank: 'left' | 'right' | 'none';
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
  if (kind === 'head') {
    const valves = valveSpots(cylinders, counts);
    const chambers = numbered('chamber', counts.chambers ?? 0);
    return [...valves, ...missingPorts(valves), ...chambers, ...camJournals(counts), ...deckCorners()];
  }
  if (kind === 'block') {
    const corners = counts.decks === 2 ? bankCorners() : deckCorners();
    const mains = numbered('main', counts.mains ?? 0, 'M', false);
    // One camshaft runs in the tunnel of a block.
    const tunnel = numbered('cam_journal', counts.cam_journals ?? 0, 'J', false);
    return [...numbered('cylinder', cylinders), ...mains, ...tunnel, ...corners];
  }
  if (kind === 'crank') {
    const pins = numbered('journal', counts.pins ?? 0, 'P', false).map((pin) => ({ ...pin, row: 2 }));
    return [...numbered('journal', counts.mains ?? 0, 'M', false), ...pins];
  }
  if (kind === 'rod_set') return numbered('rod', counts.rods ?? 0);
  return [];
}

/**
 * Ports that the type of a head does not have yet: one for each cylinder and side, in the order of its first valve, called
 * `1I`, `1E`. A type that names a port of its own (a siamesed one, for two cylinders) is left as it is.
 */
export function missingPorts(
  spots: readonly Readonly<
    Pick<DescribedSpot, 'benchOrder' | 'row' | 'bank' | 'cylinder' | 'side'> & { kind: string }
  >[],
): DescribedSpot[] {
  if (spots.some((spot) => spot.kind === 'port')) return [];
  const valves = spots
    .filter((spot) => spot.kind === 'valve' && spot.cylinder !== null && spot.side !== null)
    .toSorted((a, b) => a.row - b.row || a.benchOrder - b.benchOrder);
  const first = new Map(valves.toReversed().map((valve) => [`${valve.cylinder}${valve.side}`, valve]));
  return valves
    .filter((valve) => first.get(`${valve.cylinder}${valve.side}`) === valve)
    .map(({ row, bank, cylinder, side }, index) => ({
      kind: 'port',
      label: `${cylinder}${side}`,
      benchOrder: index + 1,
      row,
      bank,
      cylinder,
      side,
    }));
}

const corner = (label: string, index: number): DescribedSpot => ({
  kind: 'deck_corner',
  label,
  benchOrder: index + 1,
  row: 1,
  bank: 'none',
  cylinder: null,
  side: null,
});

const deckCorners = (): DescribedSpot[] => ['FI', 'FE', 'RI', 'RE'].map(corner);

/** Two decks are two banks: front and rear, valley and outer side of each. */
const bankCorners = (): DescribedSpot[] =>
  (['left', 'right'] as const).flatMap((bank, row) =>
    ['FV', 'FO', 'RV', 'RO'].map((label, index) => ({
      ...corner(`${bank === 'left' ? 'L' : 'R'}${label}`, index),
      row: row + 1,
      bank,
    })),
  );

/** Bores of the camshafts of a head: one row, or one for each side. */
function camJournals({ cam_journals: journals = 0, camshafts = 1 }: Counts): DescribedSpot[] {
  if (camshafts !== 2 || journals % 2 !== 0) return numbered('cam_journal', journals, 'J', false);
  return (['I', 'E'] as const).flatMap((side, index) =>
    numbered('cam_journal', journals / 2, `J${side}`, false).map((spot) => ({ ...spot, row: index + 1, side })),
  );
}

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
