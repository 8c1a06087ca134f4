/** Surveys of flatness: what is read over each face of a casting, and what is said of it. */
import { FACES, type Face, faceQuantities, GAP_PLACES, GRID_POINTS, LINE_POINTS } from '../faces.ts';
import { type Quantity, quantity, tally, word } from '../quantity.ts';

const flat = { fine: true, orTyped: true, over: 'too much' } as const;

function quantitiesOf(face: Face): Quantity[] {
  const of = faceQuantities(face);
  const said = face.words.toLowerCase();
  const like = face.judgedLike === null ? null : faceQuantities({ code: face.judgedLike });
  const grid = { points: GRID_POINTS, pointsInCode: true } as const;
  const lines = { points: LINE_POINTS, pointsInCode: true } as const;
  return [
    quantity(of.flatness, `${said} flatness`, { ...flat, derived: of.flatness, judgedAs: like?.flatness ?? null }),
    quantity(of.along, `${said}, along`, { ...flat, derived: of.along, judgedAs: like?.along ?? null }),
    quantity(of.across, `${said}, across`, { ...flat, derived: of.across, judgedAs: like?.across ?? null }),
    quantity(of.span, `${said}, in any span`, { ...flat, derived: of.span, judgedAs: like?.span ?? null }),
    quantity(of.cut, `${said}, least cut`, { fine: true, over: 'too much', derived: of.cut }),
    quantity(of.dial, `${said}, dial`, { ...grid, fine: true, signed: true, countsSteps: true }),
    quantity(of.gap, `${said}, feeler`, { ...lines, fine: true }),
    quantity(of.gapPlace, `${said}, where it gaps`, { ...word, ...lines, choices: GAP_PLACES }),
    quantity(of.columns, `${said}, columns of the grid`, { ...tally, judgedAs: like?.columns ?? null }),
    quantity(of.rows, `${said}, rows of the grid`, { ...tally, judgedAs: like?.rows ?? null }),
    quantity(of.length, `${said}, length of the grid`, { judgedAs: like?.length ?? null }),
    quantity(of.width, `${said}, width of the grid`, { judgedAs: like?.width ?? null }),
    quantity(of.spanLength, `${said}, length of the span`, { judgedAs: like?.spanLength ?? null }),
    quantity(of.pit, `${said}, deepest pit, groove or weld below a straightedge`, { fine: true, over: 'too deep' }),
  ];
}

/** Flatness of every face, and what a cut needs to know. */
export const FACE_QUANTITIES: readonly Quantity[] = [
  ...FACES.flatMap(quantitiesOf),
  quantity('cut-finish', 'cut for the finish', { fine: true }),
  quantity('feeler-step', 'step of the feelers', { fine: true }),
  quantity('deck-to-cam', 'deck to cam line', {
    fine: true,
    entryRule: 'implied',
    entryDigits: 4,
    points: [
      ['front', 'at the front'],
      ['rear', 'at the rear'],
    ],
  }),
  quantity('earlier-removal', 'taken off before, as stamped or told', { fine: true }),
  quantity('total-removed', 'taken off from new', {
    fine: true,
    signed: true,
    over: 'too much',
    derived: 'total-removed',
  }),
];
