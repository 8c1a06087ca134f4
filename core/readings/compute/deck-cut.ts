/**
 * How much to take off a face, by the way it is levelled on the machine, and what is left then.
 *
 * Clean-up is the flatness over the plane that is cut along; a pit, groove or weld that goes deeper decides instead; on top
 * comes a whisker for the finish. Common practice, no source; the planes are exact mathematics.
 */
import { type Face, faceQuantities } from '../../catalogue/compute/faces.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Bench } from './bench.ts';
import { figureOf, judgedOf, saidOf } from './deck-figures.ts';
import { type FaceGrid, isWhole } from './deck-grid.ts';
import { cornersOf } from './deck-planes.ts';
import type { CutPlan, CutWay, StageSurvey } from './deck-survey-model.ts';
import { stripOf } from './geometry/straightedge.ts';
import { wholeOf } from './geometry/whole.ts';
import { type Known, type Look, made } from './look.ts';

type Asked = Readonly<{ bench: Bench; look: Look; face: Face; grid: FaceGrid; unit: UnitCode }>;
type Level = Readonly<{ code: CutWay['code']; words: string; cleanUp: Known }>;

/** Mean height at one end of the grid, where the thickness is read: of the middle row, or of the two beside the middle. */
function endHeight({ points, rows }: FaceGrid, column: number): Known | null {
  const middle = rows % 2 === 1 ? [(rows + 1) / 2] : [rows / 2, rows / 2 + 1];
  const found = middle.map((row) => points.find((it) => it.column === column && it.row === row)?.known ?? null);
  if (found.some((it) => it === null)) return null;
  return made(found, wholeOf(found.reduce((sum, it) => sum + (it?.value ?? 0), 0) / found.length));
}

/**
 * Flatness over a plane that runs as the cam line does from front to rear. Across it may lean as suits the face best: a line
 * is parallel to every plane through its direction.
 *
 * @returns null while the distance from deck to cam line is not known at both ends
 */
export function camFlatness(look: Look, grid: FaceGrid): Known | null {
  const [front, rear] = ['front', 'rear'].map((point) => look.value('deck-to-cam', { point }));
  const [first, last] = [endHeight(grid, 1), endHeight(grid, grid.columns)];
  if (front?.value == null || rear?.value == null || first?.value == null || last?.value == null) return null;
  const slope = (last.value - rear.value - (first.value - front.value)) / (grid.columns - 1);
  const strip = stripOf(grid.points.map(({ column, row, z }) => ({ t: row, z: z - slope * column })));
  return made([front, rear, first, last], wholeOf(strip.zone));
}

/** What is on the machine when the face is cut: the thickness of a head, the least deck height of a bank. */
function standsAt({ look, face }: Asked): Readonly<{ quantity: 'thickness' | 'deck-height'; known: Known }> | null {
  const quantity = face.heights[look.facts.casting.kind as keyof Face['heights']];
  if (quantity === undefined) return null;
  if (quantity === 'thickness') {
    const known = look.value(quantity);
    return known?.value == null ? null : { quantity, known };
  }
  const corners = look.all(quantity).filter(({ spot }) => face.bank === null || spot.bank === face.bank);
  const lowest = corners.toSorted((a, b) => (a.known.value ?? 0) - (b.known.value ?? 0))[0];
  return lowest ? { quantity, known: lowest.known } : null;
}

const THICKNESS_WORDS = { thickness: 'Thickness', 'deck-height': 'Lowest deck height' } as const;

function levelsOf(asked: Asked, flatness: StageSurvey['flatness'], basis: StageSurvey['basis']): Level[] {
  const { look, grid, face } = asked;
  const known = asked.bench.known(flatness.quantity, null, null, look.place.stage);
  if (known?.value == null) return [];
  if (basis !== 'grid') {
    const words = basis === 'straightedge' ? 'At least, by straightedge' : 'At least, by the figure typed';
    return [{ code: 'straightedge', words, cleanUp: known }];
  }
  const [byHand] = cornersOf(grid, face);
  const cam = camFlatness(look, grid);
  return [
    { code: 'best', words: 'Levelled best', cleanUp: known },
    ...(byHand ? [{ code: 'corners' as const, words: 'Levelled on 3 corners', cleanUp: byHand.known }] : []),
    ...(cam ? [{ code: 'cam' as const, words: 'Parallel to the cam line', cleanUp: cam }] : []),
  ];
}

/** Only the deck of a head has a limit on what may go in all. */
function totalAfter({ bench, look, face, unit }: Asked, cut: Known): CutWay['total'] {
  if (look.facts.casting.kind !== 'head' || face.code !== 'deck') return null;
  const before = look.value('total-removed');
  const place = { quantity: 'total-removed', stage: 'after', unit } as const;
  const hasLimit = bench.limit('total-removed', 'after', null) !== null;
  if (before?.value != null) return judgedOf(bench, place, made([before, cut], before.value + (cut.value ?? 0)));
  return hasLimit ? judgedOf(bench, place, before) : null;
}

function wayOf(asked: Asked, { code, words, cleanUp }: Level, finish: Known, pit: Known | null): CutWay {
  const { bench, unit } = asked;
  const isPit = pit !== null && (pit.value ?? 0) > (cleanUp.value ?? 0);
  const decides = isPit ? pit : cleanUp;
  const cut = made([decides, finish], (decides.value ?? 0) + (finish.value ?? 0));
  const stands = standsAt(asked);
  return {
    code,
    words,
    cleanUp: figureOf(cleanUp, unit),
    cut: figureOf(cut, unit),
    decidedBy: isPit ? 'pit' : 'flatness',
    left:
      stands &&
      judgedOf(
        bench,
        { quantity: stands.quantity, stage: 'after', unit },
        made([stands.known, cut], (stands.known.value ?? 0) - (cut.value ?? 0)),
      ),
    total: totalAfter(asked, cut),
  };
}

function earlierWords({ look, unit }: Asked): string[] {
  const visits = look.facts.earlier.map(({ tag, removed }) =>
    removed === null ? `Tag ${tag}: not measured before and after` : `Tag ${tag}: ${saidOf(removed, unit)} off`,
  );
  const told = look.either('earlier-removal');
  return [...visits, ...(told?.value == null ? [] : [`Stamped or told: ${saidOf(told.value, unit)} off`])];
}

function leftOut({ look, grid, face }: Asked, levels: readonly Level[]): string[] {
  const has = (code: CutWay['code']) => levels.some((level) => level.code === code);
  const { camLayout, kind } = look.facts.casting;
  const hasCam = face.code === 'deck' && kind === 'head' && (camLayout === 'sohc' || camLayout === 'dohc');
  return [
    ...(has('best') && !has('corners') ? ['Levelled on 3 corners: read the corners of the grid'] : []),
    ...(has('best') && hasCam && !has('cam')
      ? ['Parallel to the cam line: measure deck to cam line, front and rear']
      : []),
    ...(has('straightedge') && !has('best') && !isWhole(grid)
      ? ['Levelled best: read the grid with a dial, a straightedge does not show how to level']
      : []),
  ];
}

/** What a cut would take, by each way of levelling; null while the flatness is not known. */
export function cutPlanOf(
  asked: Asked,
  flatness: StageSurvey['flatness'],
  basis: StageSurvey['basis'],
): CutPlan | null {
  const { look, unit } = asked;
  const finish = look.figure('cut-finish');
  const levels = levelsOf(asked, flatness, basis);
  if (finish?.value == null || levels.length === 0) return null;
  const typed = look.either(faceQuantities(asked.face).pit);
  const pit = typed?.value == null ? null : typed;
  const stands = standsAt(asked);
  return {
    finish: figureOf(finish, unit),
    pit: pit && figureOf(pit, unit),
    ways: levels.map((level) => wayOf(asked, level, finish, pit)),
    leftOut: leftOut(asked, levels),
    thickness: stands && figureOf(stands.known, unit),
    thicknessWords: stands ? THICKNESS_WORDS[stands.quantity] : '',
    earlier: earlierWords(asked),
  };
}
