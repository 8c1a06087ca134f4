/** Springs by their wire, springs in pairs, and the springs of a head as a set. */
import { bothSides, load, type Quantity, quantity, tall, tally, valve, word } from '../quantity.ts';

/** Coils and indices have decimals; a count has none. */
const number = { ...valve, family: 'ratio', over: 'too many', under: 'too few' } as const;

export const WIRE_SPRINGS: readonly Quantity[] = [
  quantity('inner-load-1', 'inner spring tested at seat height', { ...valve, ...load, optional: true }),
  quantity('inner-load-2', 'inner spring tested at open height', { ...valve, ...load, optional: true }),
  quantity('inner-height-1', 'seat height of the inner spring', { ...valve, ...tall, optional: true }),
  quantity('inner-height-2', 'open height of the inner spring', { ...valve, ...tall, optional: true }),
  quantity('inner-step', 'inner spring stands shorter by', { ...valve, signed: true, optional: true }),
  quantity('spring-match', 'of the strongest spring', {
    ...valve,
    family: 'ratio',
    under: 'weak',
    derived: 'spring-match',
  }),
  quantity('spring-rate-free', 'rate from free length', {
    ...valve,
    family: 'spring_rate',
    derived: 'spring-rate-free',
    optional: true,
  }),
  quantity('rocker-clearance', 'rocker to retainer', { ...valve, under: 'not enough' }),
  quantity('wire-kind', 'wire', {
    ...valve,
    ...word,
    choices: ['spring steel', 'music wire', 'chrome silicon'],
  }),
  quantity('shear-modulus', 'shear modulus of the wire', {
    ...valve,
    family: 'pressure',
    over: 'too high',
    under: 'too low',
    optional: true,
  }),
  quantity('wire-diameter', 'wire thickness', {
    ...valve,
    fine: true,
    over: 'too thick',
    under: 'too thin',
    optional: true,
  }),
  quantity('spring-outside', 'spring, outside diameter', { ...valve, optional: true }),
  quantity('total-coils', 'coils in all', { ...number, optional: true }),
  quantity('active-coils', 'coils that work', { ...number, derived: 'active-coils', orTyped: true, optional: true }),
  quantity('spring-index', 'spring index', { ...valve, family: 'ratio', derived: 'spring-index', optional: true }),
  quantity('spring-rate-wire', 'rate from the wire', {
    ...valve,
    family: 'spring_rate',
    derived: 'spring-rate-wire',
    optional: true,
  }),
  quantity('spring-stress', 'stress in the wire, open', {
    ...bothSides,
    family: 'pressure',
    over: 'too high',
    under: 'too low',
    derived: 'spring-stress',
    optional: true,
  }),
  quantity('spring-surge', 'surge, cycles a minute', {
    ...valve,
    ...tally,
    over: 'too fast',
    under: 'too slow',
    derived: 'spring-surge',
    optional: true,
  }),
  quantity('engine-speed', 'greatest engine speed, turns a minute', {
    ...tally,
    over: 'too fast',
    under: 'too slow',
    optional: true,
  }),
  quantity('surge-margin', 'surge against the cam, times', {
    ...valve,
    family: 'ratio',
    under: 'too near',
    derived: 'surge-margin',
  }),
  quantity('height-spread', 'heights with shims, greatest less least', { over: 'too much', derived: 'height-spread' }),
  quantity('seat-load-spread', 'seat loads, greatest less least', {
    family: 'force',
    over: 'too much',
    derived: 'seat-load-spread',
    optional: true,
  }),
  quantity('spring-set', 'weakest spring of the strongest', {
    family: 'ratio',
    under: 'not matched',
    derived: 'spring-set',
  }),
  quantity('open-height', 'spring height, open', { ...bothSides, ...tall, derived: 'open-height', optional: true }),
];
