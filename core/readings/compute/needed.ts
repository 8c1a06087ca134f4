/**
 * Which readings an operation wants, and how each stands. Finishing and signing off ask this; nothing else decides it.
 *
 * A needed reading of before is met by what was last known of the place, also from an earlier operation; one of after belongs
 * to its own operation. What reads as not applicable is met. What no limit judges may be signed and prints so.
 */
import type { BenchTable, Stage } from '../../catalogue/compute/bench-table.ts';
import type { OperationId, SpotId } from '../../kernel/ids.ts';
import { withMark } from '../../kernel/measure-show.ts';
import type { Bench } from './bench.ts';
import { type CellPlace, cellAt } from './cells.ts';
import { isComputed } from './current.ts';
import { limitText } from './limit-words.ts';
import type { Spot, Verdict } from './model.ts';
import { placeAt } from './place.ts';
import type { Cell } from './sheet-model.ts';

/** One row of the catalogue: what an operation kind wants to know. */
export type Want = Readonly<{
  quantity: string;
  stage: Stage;
  where: 'all_spots' | 'worked_spots' | 'once';
  required: boolean;
}>;

export type WantingOperation = Readonly<{
  id: OperationId;
  /** Empty: all places of the casting. */
  spots: readonly SpotId[];
  /** True for a redo: what the first run read does not count as its own. */
  redo: boolean;
  wants: readonly Want[];
}>;

export type NeededReading = Readonly<{
  operation: OperationId;
  quantity: string;
  spot: SpotId | null;
  point: string | null;
  stage: Stage;
  required: boolean;
  /** `3E1 installed height`. */
  words: string;
  cell: Cell;
  /** True when it is known, not applicable, or computed. */
  isMet: boolean;
  /** As shown, with its unit; empty when not measured. */
  value: string;
  /** `1.690 – 1.710 in, casting type sheet`; `no limit known`. */
  limit: string;
}>;

/** A map of cracks is wanted only where a crack was found: common sense, no source. */
const ONLY_WHEN: Readonly<Record<string, Readonly<{ quantity: string; unless: string }>>> = {
  'crack-map': { quantity: 'crack-result', unless: 'none found' },
};

/**
 * Every reading the operations want, in their order.
 *
 * @param tables The casting's tables: of a quantity with several points, those on show are wanted.
 */
export function listNeeded(
  bench: Bench,
  operations: readonly WantingOperation[],
  tables: readonly BenchTable[],
): NeededReading[] {
  return operations.flatMap((operation) =>
    operation.wants
      .filter((want) => isWanted(bench, want))
      .flatMap((want) =>
        placesOf(bench, operation, want, tables).map((place) => neededAt(bench, operation, want, place)),
      ),
  );
}

function isWanted(bench: Bench, want: Want): boolean {
  const rule = ONLY_WHEN[want.quantity];
  return !rule || bench.rows(rule.quantity, null, null, want.stage).current?.typed !== rule.unless;
}

function placesOf(bench: Bench, operation: WantingOperation, want: Want, tables: readonly BenchTable[]): CellPlace[] {
  const quantity = bench.quantity(want.quantity);
  if (!quantity) return [];
  const points = quantity.derived === null ? pointsShown(quantity.points, want, tables) : [null];
  return spotsFor(bench, operation, want, quantity.spotKind).flatMap((spot) =>
    points.flatMap((point) => {
      const place = placeAt(bench, { quantity: want.quantity, spot: spot?.id ?? null, point, stage: want.stage });
      return place ? [place] : [];
    }),
  );
}

function spotsFor(bench: Bench, operation: WantingOperation, want: Want, kind: Spot['kind'] | null): (Spot | null)[] {
  if (kind === null || want.where === 'once') return kind === null ? [null] : [];
  const all = bench.facts.spots.filter((spot) => spot.kind === kind);
  if (want.where === 'all_spots') return all;
  const here = bench.facts.spots.filter((spot) => operation.spots.includes(spot.id));
  const worked = all.filter((spot) => here.includes(spot) || here.some((valve) => serves(spot, valve)));
  return worked.length > 0 ? worked : all;
}

/** A port is worked with its valves; one without a cylinder serves several. */
const serves = (port: Spot, valve: Spot): boolean =>
  port.kind === 'port' &&
  valve.kind === 'valve' &&
  port.side === valve.side &&
  (port.cylinder === null || port.cylinder === valve.cylinder);

/** The points that a table shows for this casting; all of them where no table shows any. */
function pointsShown(
  points: readonly Readonly<{ code: string }>[],
  want: Want,
  tables: readonly BenchTable[],
): (string | null)[] {
  if (points.length === 0) return [null];
  const shown = tables.flatMap((table) =>
    table.rows.flatMap((row) =>
      row.shown && row.quantity === want.quantity && row.stage === want.stage && row.point !== null ? [row.point] : [],
    ),
  );
  return shown.length > 0 ? [...new Set(shown)] : points.map((point) => point.code);
}

function neededAt(bench: Bench, operation: WantingOperation, want: Want, place: CellPlace): NeededReading {
  const own = cellAt(bench, place);
  const known = want.stage === 'before' && !isThere(own) ? cellAt(bench, { ...place, stage: 'after' }) : own;
  const cell = isThere(known) ? known : own;
  const limit = bench.limit(want.quantity, want.stage, place.spot?.side ?? null)?.limit;
  const figures = limit && limitText(limit);
  return {
    operation: operation.id,
    quantity: want.quantity,
    spot: place.spot?.id ?? null,
    point: place.point,
    stage: want.stage,
    required: want.required,
    words: [place.spot?.label, place.quantity.words, place.point].filter((part) => part).join(' '),
    cell,
    isMet: isThere(cell) && (want.stage === 'before' || isOwn(bench, operation, place)),
    value: cell.text === '' || place.unit === null ? cell.text : withMark(cell.text, place.unit),
    limit: limit && figures ? `${withMark(figures, limit.unit)}, ${limit.sourceWords}` : 'no limit known',
  };
}

/** Something stands there that is more than a plan and that two people do not dispute: chosen shims are not fitted ones. */
const isThere = (cell: Cell): boolean =>
  cell.state === 'read' || cell.state === 'computed' || cell.state === 'not applicable';

/** A redo takes its own readings; a computed figure is as old as what it is made from and always its own. */
function isOwn(bench: Bench, operation: WantingOperation, place: CellPlace): boolean {
  const rows = bench.rows(place.quantity.code, place.spot, place.point, place.stage);
  if (!operation.redo || isComputed(place.quantity, rows)) return true;
  const { current } = rows;
  return current === null || current.operation === null || current.operation >= operation.id;
}

/** Whether a signature must wait for this one: missing though required, or failed or close without a lead's yes. */
export function stopsSigning({ required, isMet, cell }: NeededReading): boolean {
  if (!isMet) return required || cell.state === 'two readings';
  return isBad(cell.verdict) && cell.decision?.accepted !== true;
}

const isBad = (verdict: Verdict | null): boolean => verdict?.name === 'fail' || verdict?.name === 'too close to call';

/** `24 of 24 read`; empty when nothing is needed. */
export function neededSummary(needed: readonly NeededReading[]): string {
  const required = needed.filter((it) => it.required);
  if (required.length === 0) return '';
  return `${required.filter((it) => it.isMet).length} of ${required.length} read`;
}
