/**
 * Flatness of faces: of the whole, along, across and in any span, and the least cut that cleans a face up. A complete dial grid
 * goes before a complete set of straightedge lines. What was read only in part says nothing until it fails.
 */
import { FACES, type Face, type FaceCode, faceQuantities, facesOf } from '../../../catalogue/compute/faces.ts';
import { type FaceGrid, gridOf, isWhole, ofPart, readOf, TOO_FEW, zoneKnown, zoneOf } from '../deck-grid.ts';
import { hasBanks, isNeeded, type Line, linesMissing, linesOf, readLines } from '../deck-lines.ts';
import { spanAt, worstAlong } from '../deck-sections.ts';
import { type Known, type Look, made, unknown } from '../look.ts';
import type { Formula } from './formula.ts';
import { largest } from './formula.ts';

/** What a formula may know of a face in two ways, better one first. */
type Ways = Readonly<{ grid: Known | null; lines: Known | null }>;

const isSaid = (known: Known | null): known is Known => known?.value != null;

/** The first way that says something; else why not; null where nobody has begun. */
const firstOf = ({ grid, lines }: Ways): Known | null => [grid, lines].find(isSaid) ?? grid ?? lines;

/** A grid is read from the first point on; before the fourth it says that there are too few. */
function byGrid(look: Look, quantity: string, grid: FaceGrid, known: () => Known | null): Known | null {
  if (grid.points.length === 0) return null;
  const found = known();
  return found === null ? unknown(TOO_FEW) : ofPart(look, quantity, found, isWhole(grid), readOf(grid));
}

function byLines(look: Look, quantity: string, face: Face, wanted: (line: Line) => boolean): Known | null {
  const all = linesOf(look, face);
  const read = readLines(look, face, all.filter(wanted));
  // A line across counts for the whole face where it was laid, and is not asked for.
  const worst = quantity === faceQuantities(face).flatness ? readLines(look, face, all).worst : read.worst;
  if (worst === null) return null;
  return ofPart(look, quantity, worst, read.read >= read.wanted, linesMissing(read).marks[0] ?? '');
}

const flatnessOf =
  (face: Face): Formula =>
  (look) => {
    const of = faceQuantities(face);
    const grid = gridOf(look, face);
    return firstOf({
      grid: byGrid(look, of.flatness, grid, () => {
        const zone = zoneOf(grid);
        return zone && zoneKnown(grid, zone);
      }),
      lines: byLines(look, of.flatness, face, isNeeded),
    });
  };

const straightness =
  (face: Face, kind: 'along' | 'across'): Formula =>
  (look) => {
    const quantity = faceQuantities(face)[kind];
    const grid = gridOf(look, face);
    return firstOf({
      grid: byGrid(look, quantity, grid, () => worstAlong(grid, kind)),
      lines: byLines(look, quantity, face, (line) => line.kind === kind),
    });
  };

const inSpan =
  (face: Face): Formula =>
  (look) => {
    const of = faceQuantities(face);
    const grid = gridOf(look, face);
    if (look.figure(of.spanLength)?.value == null || grid.points.length === 0) return null;
    if (look.figure(of.length)?.value == null || look.figure(of.width)?.value == null)
      return unknown('type the length and the width of the grid');
    const found = spanAt(look, face, grid);
    if (!found) return unknown(TOO_FEW);
    const isAll = isWhole(grid) && found.isCovered;
    return ofPart(
      look,
      of.span,
      found.known,
      isAll,
      found.isCovered ? readOf(grid) : 'points too far apart for this span',
    );
  };

/** What must go for a face without low places: its unevenness or the deepest pit, whichever is more, and the finish. */
const leastCut =
  (face: Face): Formula =>
  (look) => {
    const of = faceQuantities(face);
    const flatness = look.value(of.flatness);
    const finish = look.figure('cut-finish');
    if (flatness?.value == null || finish?.value == null) return null;
    const deepest = largest([flatness, look.either(of.pit)]) ?? flatness;
    return made([deepest, finish], (deepest.value ?? 0) + finish.value);
  };

/** A V or flat block is as uneven as the worse of its two decks. */
const bothBanks =
  (of: (face: FaceCode) => string): Formula =>
  (look) => {
    const decks = facesOf('block', true).map((face) => ({ face, known: look.value(of(face)) }));
    const worst = largest(decks.map(({ known }) => known));
    const missing = decks.filter(({ known }) => known?.value == null);
    if (worst === null) return null;
    const words = missing.map(({ face }) => `${face.words.toLowerCase()} not measured`).join(', ');
    return ofPart(look, of({ code: 'deck' }), worst, missing.length === 0, words);
  };

/**
 * Taken off from new: by the thickness of a new one where the sheet gives it, else earlier visits, what a stamp or the customer
 * says, and this visit. Unknown while nobody has looked for a stamp: an empty field is not "never skimmed".
 */
const totalRemoved: Formula = (look) => {
  const now = look.value('thickness');
  const whenNew = look.targetKnown('thickness', 'thickness of a new one from the sheet');
  if (now?.value != null && whenNew?.value != null) return made([now, whenNew], whenNew.value - now.value);
  const told = look.either('earlier-removal');
  const off = look.place.stage === 'after' ? look.value('stock-removed') : null;
  const visits = look.facts.earlier.filter((it) => it.removed !== null);
  const blind = look.facts.earlier.filter((it) => it.removed === null);
  if (told?.value == null && visits.length === 0 && off?.value == null) return null;
  const sum = visits.reduce((total, it) => total + (it.removed ?? 0), (told?.value ?? 0) + (off?.value ?? 0));
  const missing = [
    ...(told?.value == null ? ['write what was taken off before, 0 where no stamp is found'] : []),
    ...blind.map((it) => `visit with tag ${it.tag} was not measured`),
  ];
  return ofPart(look, 'total-removed', made([told, off], sum), missing.length === 0, missing.join('; '));
};

const formulasOf = (face: Face): readonly (readonly [string, Formula])[] => {
  const of = faceQuantities(face);
  return [
    [of.flatness, orBothBanks(face, (it) => faceQuantities(it).flatness, flatnessOf(face))],
    [of.along, orBothBanks(face, (it) => faceQuantities(it).along, straightness(face, 'along'))],
    [of.across, orBothBanks(face, (it) => faceQuantities(it).across, straightness(face, 'across'))],
    [of.span, orBothBanks(face, (it) => faceQuantities(it).span, inSpan(face))],
    [of.cut, leastCut(face)],
  ];
};

/** The deck of a block with two decks is no face of its own. */
const orBothBanks = (face: Face, of: (face: FaceCode) => string, own: Formula): Formula =>
  face.code === 'deck' ? (look) => (hasBanks(look) ? bothBanks(of)(look) : own(look)) : own;

export const FACE_FORMULAS: Readonly<Record<string, Formula>> = {
  ...Object.fromEntries(FACES.flatMap(formulasOf)),
  'total-removed': totalRemoved,
};
