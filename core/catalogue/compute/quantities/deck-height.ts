/** Decks of a block: how high, how far from the pistons, and how much to take off. */
import { cylinder, fine, gap, type Quantity, quantity, tall } from '../quantity.ts';

const corner = { spotKind: 'deck_corner', fine: true, signed: true, over: 'too much' } as const;
const cut = { fine: true, signed: true, over: 'too much' } as const;

const diesel = { onlyFor: 'diesel' } as const;

/** A maker offers up to so many thicknesses of gasket for one diesel. */
const GASKETS = [1, 2, 3, 4, 5] as const;

export const DECK_HEIGHT: readonly Quantity[] = [
  quantity('corner-over-lowest', 'above the lowest corner', { ...corner, derived: 'corner-over-lowest' }),
  quantity('corner-clearance', 'deck above the piston', { ...corner, derived: 'corner-clearance' }),
  quantity('corner-cut', 'to take off here', { ...corner, derived: 'corner-cut' }),
  quantity('deck-removed', 'taken off here', { ...corner, derived: 'deck-removed' }),
  quantity('deck-lowest', 'lowest corner', { fine: true, ...tall, derived: 'deck-lowest' }),
  quantity('deck-spread', 'corners of a bank differ by', { fine: true, over: 'too much', derived: 'deck-spread' }),
  quantity('bank-difference', 'banks differ by', {
    fine: true,
    onlyFor: 'two banks',
    over: 'too much',
    derived: 'bank-difference',
  }),
  quantity('deck-spread-performance', 'corners of a bank differ by, performance', { fine: true, over: 'too much' }),
  quantity('bank-difference-performance', 'banks differ by, performance', { fine: true, over: 'too much' }),
  quantity('compression-height', 'piston pin to crown', { ...fine, optional: true, ...tall }),
  quantity('stack', 'throw, rod and piston', { fine: true, ...tall, derived: 'stack' }),
  quantity('deck-clearance', 'piston below the deck', {
    ...fine,
    signed: true,
    over: 'too deep',
    under: 'too high',
    derived: 'deck-clearance',
    orTyped: true,
  }),
  quantity('clearance-wanted', 'piston below the deck, wanted', { ...fine, optional: true, signed: true }),
  quantity('block-cut-wanted', 'cut for the clearance wanted', { ...cut, derived: 'block-cut-wanted' }),
  quantity('block-clean-up', 'least cut that cleans up', { ...fine, derived: 'block-clean-up', orTyped: true }),
  quantity('block-cut', 'cut at the lowest corner', { ...cut, derived: 'block-cut' }),
  quantity('deck-finished', 'deck height to finish at', { fine: true, ...tall, derived: 'deck-finished' }),
  quantity('piston-to-head', 'piston to head', {
    ...gap,
    onlyFor: 'petrol',
    signed: true,
    over: 'too much',
    derived: 'piston-to-head',
  }),
  quantity('piston-protrusion', 'piston stands above the deck', {
    ...cylinder,
    ...fine,
    ...tall,
    signed: true,
  }),
  quantity('highest-piston', 'highest piston', { ...tall, fine: true, signed: true, derived: 'highest-piston' }),
  quantity('gasket-for-pistons', 'gasket for the highest piston', {
    ...diesel,
    fine: true,
    derived: 'gasket-for-pistons',
  }),
  ...GASKETS.flatMap((n) => [
    quantity(`gasket-size-${n}`, `gasket ${n}, pressed`, { ...diesel, fine: true, optional: true }),
    quantity(`gasket-up-to-${n}`, `gasket ${n}, for pistons up to`, {
      ...diesel,
      fine: true,
      optional: true,
      signed: true,
    }),
  ]),
];
