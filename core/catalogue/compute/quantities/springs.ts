/** Valve springs and the height they stand at. */
import { bothSides, checkAgain, load, type Quantity, quantity, tall, valve, word } from '../quantity.ts';

export const SPRINGS: readonly Quantity[] = [
  quantity('installed-height', 'height read', { ...bothSides, ...tall, entryRule: 'last_digits', entryDigits: 3 }),
  quantity('shims-fitted', 'shims', { ...valve, ...word }),
  quantity('height-with-shim', 'with shims', { ...bothSides, ...tall, ...checkAgain, derived: 'height-with-shim' }),
  quantity('seat-load', 'seat load', { ...bothSides, ...load, ...checkAgain, derived: 'seat-load' }),
  quantity('open-load', 'open load', { ...bothSides, ...load, ...checkAgain, derived: 'open-load' }),
  quantity('spring-rate', 'spring rate', { ...valve, family: 'spring_rate', derived: 'spring-rate' }),
  quantity('coil-bind-clearance', 'coil bind clearance', {
    ...bothSides,
    under: 'not enough',
    signed: true,
    derived: 'coil-bind-clearance',
  }),
  quantity('greatest-lift', 'greatest lift before bind', { ...bothSides, derived: 'greatest-lift', optional: true }),
  quantity('seal-gap', 'retainer to seal, closed', valve),
  quantity('seal-clearance', 'retainer to seal, open', {
    ...bothSides,
    under: 'not enough',
    signed: true,
    derived: 'seal-clearance',
  }),
  quantity('spring-load-1', 'spring tested at seat height', { ...valve, ...load }),
  quantity('spring-load-2', 'spring tested at open height', { ...valve, ...load }),
  quantity('spring-strength', 'of its load', {
    ...valve,
    family: 'ratio',
    derived: 'spring-strength',
    over: 'too strong',
    under: 'weak',
  }),
  quantity('spring-height-1', 'seat height of the spring data', { ...valve, ...tall }),
  quantity('spring-height-2', 'open height of the spring data', { ...valve, ...tall }),
  quantity('solid-height', 'solid height', { ...valve, ...tall }),
  quantity('valve-lift', 'valve lift', bothSides),
  quantity('cup-thickness', 'spring cup', valve),
  quantity('old-shim', 'old shim', valve),
  quantity('spring-free-length', 'free length', { ...valve, ...tall, entryRule: 'last_digits', entryDigits: 3 }),
  quantity('spring-squareness', 'lean', { ...valve, over: 'too much' }),
];
