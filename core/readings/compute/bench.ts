/**
 * One casting opened for measuring: what stands in each cell, what is computed from it, and what judges it.
 *
 * Everything is worked out once and kept for the life of the object; a table of 32 valves asks the same things often.
 */
import type { Stage } from '../../catalogue/compute/bench-table.ts';
import type { Quantity } from '../../catalogue/compute/quantity.ts';
import { divideRounded } from '../../kernel/units.ts';
import { type CellRows, cellKey, groupByCell, settleCell } from './current.ts';
import { FORMULAS } from './formulas.ts';
import { fromSheet, type Known, type Look, type Place } from './look.ts';
import type { Facts, Reading, ResolvedLimit, ShimStock, Spot, Tool, Verdict } from './model.ts';
import { resolveLimit } from './resolve-limit.ts';
import { systemOfCasting } from './system.ts';
import { combineUncertainty, judge } from './verdict.ts';
import { withDoubt, wordLimitsOf } from './word-limits.ts';

export type Bench = Readonly<{
  facts: Facts;
  quantity(code: string): Quantity | undefined;
  /** What people wrote in a cell. */
  rows(quantity: string, spot: Spot | null, point: string | null, stage: Stage): CellRows;
  /** What is known there, read or computed; null when not measured. */
  known(quantity: string, spot: Spot | null, point: string | null, stage: Stage): Known | null;
  limit(quantity: string, stage: Stage, side: 'I' | 'E' | null): ResolvedLimit | null;
  verdict(quantity: string, stage: Stage, side: 'I' | 'E' | null, known: Known | null): Verdict;
  look(place: Place): Look;
}>;

/** Keep answers of a function by a whole-number key: joining texts for every cell costs more than all the arithmetic. */
function remember<A extends unknown[], R>(keyOf: (...args: A) => number, answer: (...args: A) => R): (...args: A) => R {
  const kept = new Map<number, R>();
  return (...args) => {
    const key = keyOf(...args);
    const known = kept.get(key);
    if (known !== undefined || kept.has(key)) return known as R;
    const found = answer(...args);
    kept.set(key, found);
    return found;
  };
}

/** More names of quantities and points than a casting ever has. */
const NAMES = 8192;

/** Number each text the first time it is met, from 1; null is 0. */
function numberTexts(): (text: string | null) => number {
  const numbers = new Map<string, number>();
  return (text) => {
    if (text === null) return 0;
    const known = numbers.get(text);
    if (known !== undefined) return known;
    numbers.set(text, numbers.size + 1);
    return numbers.size;
  };
}

/** Open a casting. Pure: the same facts give the same answers. */
export function openBench(facts: Facts): Bench {
  const quantities = new Map(facts.quantities.map((it) => [it.code, it]));
  const tools = new Map(facts.tools.map((it) => [it.id, it]));
  const cells = groupByCell(facts.readings);
  const numberOf = numberTexts();
  const placeNumber = (spot: Spot | null, stage: Stage) => (spot?.id ?? 0) * 2 + (stage === 'before' ? 0 : 1);
  const addressOf = (quantity: string, spot: Spot | null, point: string | null, stage: Stage) =>
    (placeNumber(spot, stage) * NAMES + numberOf(quantity)) * NAMES + numberOf(point);
  /** Computed cells under way: a formula that asks for itself gets nothing instead of never ending. */
  const under = new Set<number>();
  const words = wordLimitsOf(facts, (choice) => {
    const typed = (['after', 'before'] as const).map((stage) => rows(choice, null, null, stage).current);
    return typed.find((it) => it?.kind === 'choice')?.typed ?? null;
  });

  const limit: Bench['limit'] = remember(
    (quantity: string, stage: Stage, side: 'I' | 'E' | null) =>
      numberOf(quantity) * 8 + (stage === 'before' ? 0 : 4) + (side === null ? 0 : side === 'I' ? 1 : 2),
    (quantity, stage, side): ResolvedLimit | null => {
      const { material } = facts.casting;
      const own = resolveLimit({ quantity, stage, side, material }, words.limitsOf(quantity), facts.choices);
      const like = quantities.get(quantity)?.judgedAs ?? null;
      return (
        own ?? (like === null || like === quantity ? null : (limit(like, 'after', side) ?? limit(like, 'before', side)))
      );
    },
  );

  const verdict: Bench['verdict'] = (quantity, stage, side, known) => {
    const found = limit(quantity, stage, side)?.limit;
    const value = known?.value ?? null;
    const judged = judge({
      value,
      low: found?.low ?? null,
      high: found?.high ?? null,
      uncertainty: known?.uncertainty ?? null,
      guard: facts.guard,
    });
    const doubtful = words.doubtfulFor(quantity, found);
    return doubtful ? withDoubt(judged, value, doubtful, limit(doubtful.quantity, stage, side)?.limit) : judged;
  };

  const rows = remember(addressOf, (quantity, spot, point, stage) => {
    const key = cellKey({ quantity, spot: spot?.id ?? null, point, stage });
    return settleCell(cells.get(key), (a, b) => agrees(a, b, spot));
  });

  /** Two figures say the same: within their combined uncertainty, and judged alike. */
  function agrees(a: Reading, b: Reading, spot: Spot | null): boolean {
    if (a.kind !== b.kind) return false;
    if (a.value === null || b.value === null) return a.typed === b.typed;
    const [one, two] = [readKnown(a, tools), readKnown(b, tools)];
    const apart = combineUncertainty([one.uncertainty, two.uncertainty]) ?? 0;
    const name = (it: Known) => verdict(a.quantity, a.stage, spot?.side ?? null, it).name;
    return Math.abs(a.value - b.value) <= apart && name(one) === name(two);
  }

  const known = remember(addressOf, (code, spot, point, stage): Known | null => {
    const quantity = quantities.get(code);
    const formula = quantity?.derived ? FORMULAS[quantity.derived] : undefined;
    if (!formula || quantity?.orTyped) {
      const { current } = rows(code, spot, point, stage);
      const read = current?.kind === 'number' && current.value !== null ? readKnown(current, tools) : null;
      if (read || !formula || current?.kind === 'not_applicable') return read;
    }
    const key = addressOf(code, spot, point, stage);
    if (under.has(key)) return null;
    under.add(key);
    const made = formula(look({ spot, stage }));
    under.delete(key);
    return made;
  });

  // Sentences of an inch shop about a metric head are in millimetres.
  const workFacts: Facts = { ...facts, system: systemOfCasting({ facts }) };
  const lookAt = remember(
    (spot: Spot | null, stage: Stage) => placeNumber(spot, stage),
    (spot, stage) =>
      makeLook({ facts, rows, known, limit, quantity: (it) => quantities.get(it) }, { spot, stage }, workFacts),
  );
  const look = (place: Place): Look => lookAt(place.spot, place.stage);

  return { facts, quantity: (code) => quantities.get(code), rows, known, limit, verdict, look };
}

/** A reading with the doubt of the tool it was taken with. */
function readKnown(reading: Reading, tools: ReadonlyMap<Tool['id'], Tool>): Known {
  const tool = reading.tool === null ? undefined : tools.get(reading.tool);
  const value = reading.value ?? 0;
  const share = tool?.uncertaintyBp
    ? divideRounded(BigInt(Math.abs(value)) * BigInt(tool.uncertaintyBp), 10_000n)
    : null;
  return { value: reading.value, uncertainty: tool?.uncertainty ?? share, marks: [], planned: false };
}

function makeLook(
  bench: Pick<Bench, 'facts' | 'rows' | 'known' | 'limit' | 'quantity'>,
  place: Place,
  shown: Look['facts'],
): Look {
  const { facts } = bench;
  const { spot, stage } = place;
  const side = spot?.side ?? null;
  const other: Stage = stage === 'before' ? 'after' : 'before';
  /** A quantity read once for the casting is the same at every place. */
  const spotFor = (quantity: string) => (bench.quantity(quantity)?.spotKind === null ? null : spot);
  const known = (quantity: string, at: Stage, point: string | null) =>
    bench.known(quantity, spotFor(quantity), point, at);
  const target = (quantity: string) =>
    bench.limit(quantity, stage, side)?.limit.target ?? bench.limit(quantity, other, side)?.limit.target ?? null;
  const targetKnown = (quantity: string, words: string) => {
    const value = target(quantity);
    return value === null ? null : fromSheet(value, words);
  };
  const value: Look['value'] = (quantity, at = {}) => known(quantity, at.stage ?? stage, at.point ?? null);
  const either: Look['either'] = (quantity) => known(quantity, stage, null) ?? known(quantity, other, null);
  return {
    place,
    facts: shown,
    value,
    either,
    figure: (quantity) =>
      either(quantity) ?? targetKnown(quantity, `${bench.quantity(quantity)?.words ?? quantity} from the sheet`),
    all(quantity, at = {}) {
      const kind = bench.quantity(quantity)?.spotKind ?? null;
      return facts.spots
        .filter((it) => it.kind === kind)
        .flatMap((it) => {
          const found = bench.known(quantity, it, at.point ?? null, at.stage ?? stage);
          return found?.value == null ? [] : [{ spot: it, known: found }];
        });
    },
    places(quantity) {
      const kind = bench.quantity(quantity)?.spotKind ?? null;
      return kind === null ? [] : facts.spots.filter((it) => it.kind === kind);
    },
    isDash: (quantity, at = {}) =>
      bench.rows(quantity, at.spot ?? spotFor(quantity), at.point ?? null, at.stage ?? stage).current?.kind ===
      'not_applicable',
    readOn: (quantity, at) => bench.rows(quantity, spotFor(quantity), null, at).current?.readOn ?? null,
    words: (quantity, at) => {
      const { current } = bench.rows(quantity, spotFor(quantity), null, at);
      return current && current.kind !== 'not_applicable' ? current.typed : null;
    },
    target,
    targetKnown,
    low: (quantity) =>
      bench.limit(quantity, stage, side)?.limit.low ?? bench.limit(quantity, other, side)?.limit.low ?? null,
    high: (quantity) =>
      bench.limit(quantity, stage, side)?.limit.high ?? bench.limit(quantity, other, side)?.limit.high ?? null,
    lift: () =>
      facts.valveLift === null
        ? targetKnown('valve-lift', 'lift from the sheet')
        : fromSheet(facts.valveLift, 'lift as the customer says'),
    stock: () => stockFor(facts, bench.limit('height-with-shim', 'after', side)?.limit.unit ?? null),
    stocks: () => facts.shims,
  };
}

/** Shims in the unit of the wanted height, else of the shop. */
function stockFor(facts: Facts, unit: string | null): ShimStock | null {
  const wanted = unit === 'in' || unit === 'mm' ? unit : facts.system === 'inch' ? 'in' : 'mm';
  return facts.shims.find((it) => it.unit === wanted) ?? null;
}
