/**
 * The survey of one face of a casting: dial grid, straightedge lines, what they say of its flatness, how much to cut and what
 * is left then. Pure; every figure is judged by the limits in force like any other.
 */
import type { Stage } from '../../catalogue/compute/bench-table.ts';
import {
  type Face,
  faceQuantities,
  facesOf,
  GAP_PLACES,
  type GapPlace,
  gridCode,
  MOST_COLUMNS,
  MOST_ROWS,
} from '../../catalogue/compute/faces.ts';
import { showValue, withMark } from '../../kernel/measure-show.ts';
import { type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import type { Bench } from './bench.ts';
import { cellAt } from './cells.ts';
import { adviceOf } from './deck-advice.ts';
import { cutPlanOf } from './deck-cut.ts';
import { fieldsOf } from './deck-fields.ts';
import { figureOf, judgedOf } from './deck-figures.ts';
import { type FaceGrid, FEWEST_POINTS, gridOf, readOf, TOO_FEW, zoneOf } from './deck-grid.ts';
import { gapAt, hasBanks, linesOf } from './deck-lines.ts';
import { patternOfGrid, patternOfLines } from './deck-pattern.ts';
import { planesOf } from './deck-planes.ts';
import { spanAt } from './deck-sections.ts';
import type {
  DeckSurvey,
  FaceListed,
  GridPlanes,
  GridPoint,
  JudgedFigure,
  StageSurvey,
  StraightedgeLine,
} from './deck-survey-model.ts';
import type { MinimumZone } from './geometry/minimum-zone.ts';
import type { Look } from './look.ts';
import { placeAt } from './place.ts';
import { systemOfCasting } from './system.ts';

type Asked = Readonly<{ bench: Bench; look: Look; face: Face; grid: FaceGrid; unit: UnitCode; stage: Stage }>;

/** Tenths of a thou, or micrometres. */
const STEPS = {
  in: { value: 2540, words: 'tenths of a thou', times: 10_000 },
  mm: { value: 1000, words: 'micrometres', times: 1000 },
};
const stepOf = (unit: UnitCode) => (unit === 'mm' ? STEPS.mm : STEPS.in);

/** `−28`, `+6`, `0`; between two steps with one decimal. */
function inSteps(value: number, unit: UnitCode, sign: boolean): string {
  const { value: step, times } = stepOf(unit);
  return showValue(value * times, unit, value % step === 0 ? 0 : 1, { sign });
}

const placeOf = (quantity: string, point: string | null, stage: Stage) => ({ quantity, spot: null, point, stage });

/** The faces of a casting; none for castings that are not surveyed. */
export function facesAt(bench: Bench): readonly Face[] {
  const look = bench.look({ spot: null, stage: 'before' });
  return facesOf(bench.facts.casting.kind, hasBanks(look));
}

function unitOf(bench: Bench, face: Face): UnitCode {
  const found = placeAt(bench, placeOf(faceQuantities(face).flatness, null, 'before'))?.unit;
  return found ?? (systemOfCasting(bench) === 'inch' ? 'in' : 'mm');
}

/** @returns null when the casting has no such face. `code` null: its first one. */
export function surveyOf(bench: Bench, code: string | null): DeckSurvey | null {
  const faces = facesAt(bench);
  const face = code === null ? faces[0] : faces.find((it) => it.code === code);
  if (!face) return null;
  const of = faceQuantities(face);
  const unit = unitOf(bench, face);
  const [before, after] = (['before', 'after'] as const).map((stage) => {
    const look = bench.look({ spot: null, stage });
    return { bench, look, face, grid: gridOf(look, face), unit, stage };
  }) as [Asked, Asked];
  const { columns, rows } = before.grid;
  const sized = (quantity: string) => before.look.figure(quantity)?.value ?? null;
  return {
    casting: bench.facts.casting,
    faces: faces.map((it) => listed(bench, it)),
    face: {
      code: face.code,
      words: face.words,
      sides: face.sides,
      table: face.tables[bench.facts.casting.kind as keyof Face['tables']] ?? '',
      quantities: { dial: of.dial, gap: of.gap, gapPlace: of.gapPlace },
    },
    unit,
    unitMark: unitShape(unit).mark,
    step: { value: stepOf(unit).value, words: stepOf(unit).words },
    grid: { columns, rows, length: sized(of.length), width: sized(of.width) },
    mostColumns: MOST_COLUMNS,
    mostRows: MOST_ROWS,
    fields: fieldsOf(bench, face, unit),
    placeChoices: GAP_PLACES,
    before: stageOf(before),
    after: stageOf(after),
    tools: bench.facts.tools.filter((tool) => !tool.retired),
    notes: overdue(bench, face),
    guard: bench.facts.guard,
    locked: bench.facts.lockedSince !== null,
  };
}

function listed(bench: Bench, face: Face): FaceListed {
  const { flatness } = faceQuantities(face);
  const unit = unitOf(bench, face);
  const stage = bench.known(flatness, null, null, 'after')?.value == null ? 'before' : 'after';
  const judged = judgedOf(bench, { quantity: flatness, stage, unit }, bench.known(flatness, null, null, stage));
  const summary = judged.value === null ? 'not measured' : `${withMark(judged.text, unit)}, ${judged.word}`;
  return { code: face.code, words: face.words, summary };
}

function stageOf(asked: Asked): StageSurvey {
  const { bench, look, face, grid, unit, stage } = asked;
  const of = faceQuantities(face);
  const zone = zoneOf(grid);
  const planes = zone && planesAt(asked, zone);
  const lines = linesAt(asked, planes);
  const judged = (quantity: string) =>
    judgedOf(bench, { quantity, stage, unit }, bench.known(quantity, null, null, stage));
  const flatness = judged(of.flatness);
  const basis = basisOf(asked, flatness, zone);
  const pattern = zone ? patternOfGrid(grid, zone, unit) : patternOfLines(linesRead(asked, lines));
  const cut = cutPlanOf({ bench, look, face, grid, unit }, flatness, basis);
  return {
    stage,
    points: pointsAt(asked, zone),
    lines,
    planes,
    readWords: readWords(asked),
    basis,
    flatness,
    along: judged(of.along),
    across: judged(of.across),
    span: judged(of.span),
    pattern,
    cut,
    ...adviceOf(asked, { flatness, cut, pattern }),
  };
}

function planesAt({ look, face, grid, unit }: Asked, zone: MinimumZone): GridPlanes {
  const worst = spanAt(look, face, grid);
  const length = figureOf(look.figure(faceQuantities(face).spanLength), unit);
  return planesOf({ grid, face, unit, zone, span: worst && { worst, length } });
}

function pointsAt({ bench, face, grid, unit, stage }: Asked, zone: MinimumZone | null): GridPoint[] {
  const { dial } = faceQuantities(face);
  const quantity = bench.quantity(dial);
  if (!quantity) return [];
  const { columns, rows } = grid;
  const isRaised = zone !== null && zone.zone > 0;
  return Array.from({ length: columns * rows }, (_, n): GridPoint => {
    const [column, row] = [Math.floor(n / rows) + 1, (n % rows) + 1];
    const code = gridCode(column, row);
    const index = grid.points.findIndex((it) => it.code === code);
    const height = index < 0 || !zone ? null : (zone.heights[index] ?? null);
    const read = grid.points[index];
    return {
      code,
      words: `column ${column}, row ${row}`,
      column,
      row,
      along: (column - 1) / (columns - 1),
      across: (row - 1) / (rows - 1),
      cell: cellAt(bench, { quantity, spot: null, point: code, stage, unit }),
      steps: read ? inSteps(read.z, unit, true) : '',
      height,
      heightSteps: height === null ? '' : inSteps(height, unit, false),
      touches:
        isRaised && zone.upper.includes(index) ? 'upper' : isRaised && zone.lower.includes(index) ? 'lower' : null,
    };
  });
}

function linesAt({ bench, look, face, grid, unit, stage }: Asked, planes: GridPlanes | null): StraightedgeLine[] {
  const of = faceQuantities(face);
  const [gap, place] = [bench.quantity(of.gap), bench.quantity(of.gapPlace)];
  if (!gap || !place) return [];
  return linesOf(look, face).map((line) => {
    const at = { spot: null, point: line.code, stage };
    const code = sectionCode(line, grid);
    return {
      ...line,
      cell: cellAt(bench, { ...at, quantity: gap, unit }),
      place: cellAt(bench, { ...at, quantity: place, unit: null }),
      section: planes?.sections.find((it) => it.code === code) ?? null,
    };
  });
}

/** The section of the grid that lies under a line; null where none does. */
function sectionCode(
  line: Pick<StraightedgeLine, 'code' | 'kind' | 'from'>,
  { columns, rows }: FaceGrid,
): string | null {
  if (line.kind === 'diagonal') return line.code;
  const isAlong = line.kind === 'along';
  const number = (isAlong ? line.from.across * (rows - 1) : line.from.along * (columns - 1)) + 1;
  return Number.isInteger(number) ? `${isAlong ? 'row' : 'column'}-${number}` : null;
}

const linesRead = ({ look, face }: Asked, lines: readonly StraightedgeLine[]) =>
  lines.flatMap(({ code, words, kind, place }) => {
    const gap = gapAt(look, face, { code })?.value ?? null;
    const said = GAP_PLACES.find((it): it is GapPlace => it === place.text) ?? null;
    return gap === null ? [] : [{ code, words, kind, gap, place: said }];
  });

function basisOf({ bench, stage }: Asked, flatness: JudgedFigure, zone: MinimumZone | null): StageSurvey['basis'] {
  if (bench.rows(flatness.quantity, null, null, stage).current?.kind === 'number') return 'typed';
  if (flatness.value === null) return 'none';
  return zone?.zone === flatness.value ? 'grid' : 'straightedge';
}

function readWords({ bench, face, grid, stage }: Asked): string {
  const { dial } = faceQuantities(face);
  const used = grid.points.flatMap(({ code }) => bench.rows(dial, null, code, stage).current?.tool ?? []);
  const names = bench.facts.tools.filter((tool) => used.includes(tool.id)).map((tool) => tool.name);
  const few = grid.points.length > 0 && grid.points.length < FEWEST_POINTS ? [TOO_FEW] : [];
  return [readOf(grid), ...few, ...names].join(', ');
}

/** Overdue gauges that this face was read with. Warns, never blocks. */
function overdue({ facts }: Bench, face: Face): string[] {
  const { dial, gap, flatness } = faceQuantities(face);
  const own: readonly string[] = [dial, gap, flatness];
  const used = facts.readings.filter((it) => own.includes(it.quantity)).map((it) => it.tool);
  return facts.tools
    .filter((tool) => tool.overdue && used.includes(tool.id))
    .map((tool) => `${tool.name}: check was due ${tool.nextDue}. Readings taken with it stand and say so.`);
}
