/** Chambers: what the burette says, how large they are at the deck, and what cutting and sunk valves make of them. */
import { bothSides, type Quantity, quantity, tally } from '../quantity.ts';

const cc = { family: 'volume', unit: 'cc' } as const;
const chamber = { spotKind: 'chamber', ...cc } as const;
const change = { ...cc, signed: true, over: 'grew too much', under: 'shrank too much' } as const;

export const CHAMBERS: readonly Quantity[] = [
  quantity('chamber-changed', 'change measured', { ...chamber, ...change, derived: 'chamber-changed' }),
  quantity('chamber-expected', 'as reckoned', { ...chamber, derived: 'chamber-expected' }),
  quantity('chamber-to-largest', 'smaller than the largest by', { ...chamber, derived: 'chamber-to-largest' }),
  quantity('chamber-mean', 'chambers, mean', { ...cc, derived: 'chamber-mean' }),
  quantity('chamber-spread', 'chambers, largest less smallest', {
    ...cc,
    over: 'too uneven',
    derived: 'chamber-spread',
  }),
  quantity('chamber-spread-performance', 'chambers, largest less smallest, performance', { ...cc, over: 'too uneven' }),
  quantity('chamber-squares', 'squares inside the traced edge', { ...tally, optional: true }),
  quantity('chamber-square-side', 'side of a square', { optional: true }),
  quantity('chamber-full', 'one chamber filled to the deck', { ...cc, optional: true }),
  quantity('chamber-lowered', 'the same, filled less high', { ...cc, optional: true }),
  quantity('chamber-lowered-by', 'less high by', { fine: true, optional: true }),
  quantity('chamber-string', 'string round the edge', { optional: true }),
  quantity('chamber-circle', 'chamber as a circle at the deck', {
    derived: 'chamber-circle',
    orTyped: true,
  }),
  quantity('cut-per-cc', 'cut that takes one cc', { fine: true, derived: 'cut-per-cc' }),
  quantity('valve-head-diameter', 'valve head, across', {
    ...bothSides,
    optional: true,
    over: 'too big',
    under: 'too small',
  }),
  quantity('valve-sink', 'valve sunk by', {
    ...bothSides,
    fine: true,
    signed: true,
    over: 'too deep',
    derived: 'valve-sink',
    orTyped: true,
  }),
  quantity('valve-sink-volume', 'chamber grows by', { ...bothSides, ...change, derived: 'valve-sink-volume' }),
  quantity('chamber-by-cut', 'chamber, by the cut', { ...change, derived: 'chamber-by-cut' }),
  quantity('chamber-by-sink', 'chamber, by sunk valves', { ...change, derived: 'chamber-by-sink' }),
  quantity('chamber-change', 'chamber, change', { ...change, derived: 'chamber-change' }),
  quantity('chamber-for-ratio', 'chamber reckoned with', { ...cc, derived: 'chamber-for-ratio' }),
];
