/** Valve faces, seats and stem tips: widths, angles, runout, place, and how deep a valve sits. */
import { bothSides, fine, type Quantity, quantity, tall, valve, word } from '../quantity.ts';

const angle = { ...bothSides, family: 'angle', over: 'too steep', under: 'too flat' } as const;
/** An angle of 46 from the stem axis is one of 44 from the head plane; plane where nobody says. */
const reference = { ...valve, ...word, choices: ['head plane', 'stem axis'] } as const;
const width = { ...bothSides, over: 'too wide', under: 'too narrow' } as const;

export const SEATS: readonly Quantity[] = [
  quantity('seat-angle', 'seat angle', angle),
  quantity('seat-angle-from', 'seat angle counts from', reference),
  quantity('valve-angle', 'valve face angle', angle),
  quantity('valve-angle-from', 'face angle counts from', reference),
  quantity('angle-difference', 'face steeper than seat by', {
    ...angle,
    signed: true,
    derived: 'angle-difference',
    optional: true,
  }),
  // Typed it is the width along the seat; what was measured another way is typed in its own row and reckoned over.
  quantity('seat-width', 'seat width', { ...width, derived: 'seat-width', orTyped: true }),
  quantity('seat-width-flat', 'seat width, measured flat', width),
  quantity('seat-outer', 'seat, outer diameter', { ...bothSides, optional: true }),
  quantity('seat-inner', 'seat, inner diameter', { ...bothSides, optional: true }),
  quantity('seat-runout', 'seat runout', { ...valve, fine: true, over: 'too much' }),
  quantity('seat-eccentricity', 'seat off centre', {
    ...valve,
    fine: true,
    over: 'too much',
    derived: 'seat-eccentricity',
    optional: true,
  }),
  quantity('face-runout', 'face runout', { ...valve, fine: true, over: 'too much' }),
  quantity('seat-place', 'seat on the face', {
    ...valve,
    ...word,
    choices: ['middle', 'outward of middle', 'near the edge', 'near the stem'],
  }),
  quantity('seat-free-outer', 'free outside the seat', { ...valve, under: 'not enough' }),
  quantity('seat-free-inner', 'free inside the seat', { ...valve, under: 'not enough' }),
  quantity('seat-free', 'free beside the seat, the less', { ...valve, under: 'not enough', derived: 'seat-free' }),
  quantity('margin', 'margin', { ...bothSides, over: 'too thick', under: 'too thin' }),
  quantity('margin-left', 'margin left after grinding', {
    ...bothSides,
    over: 'too thick',
    under: 'too thin',
    derived: 'margin-left',
    judgedAs: 'margin',
  }),
  quantity('tip-height', 'stem tip height', { ...valve, ...tall }),
  quantity('tip-from-mean', 'tip height from the mean', { ...valve, ...tall, signed: true, derived: 'tip-from-mean' }),
  quantity('tip-change', 'tip higher than found', {
    ...valve,
    ...tall,
    signed: true,
    derived: 'tip-change',
    optional: true,
  }),
  quantity('tip-removed', 'taken off the tip', { ...valve, over: 'too much' }),
  quantity('recession', 'recession', { ...bothSides, signed: true, over: 'too deep', under: 'too proud' }),
  quantity('recession-surfaced', 'recession after surfacing', {
    ...bothSides,
    signed: true,
    over: 'too deep',
    under: 'too proud',
    derived: 'recession-surfaced',
    judgedAs: 'recession',
  }),
  quantity('pocket-depth', 'spring pocket', { ...valve, over: 'too deep', under: 'too shallow' }),
  quantity('tip-spread', 'tip heights, greatest less least', {
    ...fine,
    entryRule: 'none',
    over: 'too much',
    derived: 'tip-spread',
  }),
];
