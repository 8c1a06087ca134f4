/**
 * Families of measured things, the units a person may type, and the whole-number base unit each family is kept in.
 *
 * A unit is `per` base units, as an exact fraction of big integers; a temperature has an offset too. Length and roughness
 * are exact in both inch and metric; the other families round once to a base unit far below any tool.
 * Source of the factors: NIST SP 811 (2008), Appendix B.8, by their definitions (1 in = 25.4 mm, 1 lb = 0.453 592 37 kg,
 * standard gravity 9.806 65 m/s2); inHg is the conventional one (13 595.1 kg/m3). Checked against tests/reference/units.json.
 */
import { divideRounded, type Unit } from './units.ts';

export const FAMILIES = [
  'length',
  'roughness',
  'force',
  'spring_rate',
  'pressure',
  'volume',
  'angle',
  'temperature',
  'duration',
  'torque',
  'mass',
  'count',
  'ratio',
  'choice',
  'text',
] as const;

/** What kind of thing is measured. `choice` and `text` carry words, no figure. */
export type Family = (typeof FAMILIES)[number];

/** Newtons per metre in millionths: 1 lbf/in and 1 N/mm are both far above one. */
export type MicronewtonsPerMetre = Unit<'MicronewtonsPerMetre'>;

/** An exact fraction; `under` is above 0. */
export type Fraction = Readonly<{ over: bigint; under: bigint }>;

type UnitShape = Readonly<{
  family: Family;
  /** As printed after a figure. */
  mark: string;
  /** Base units in one of this unit. */
  per: Fraction;
  /** Base units at zero of this unit (temperatures). */
  zero?: Fraction;
  /** Decimals shown where the quantity says nothing else. */
  decimals: number;
}>;

const fraction = (over: bigint, under = 1n): Fraction => ({ over, under });
const POUND_FORCE = fraction(44_482_216_152_605n, 10_000_000n);

const UNITS = {
  in: { family: 'length', mark: 'in', per: fraction(25_400_000n), decimals: 3 },
  mm: { family: 'length', mark: 'mm', per: fraction(1_000_000n), decimals: 2 },
  uin: { family: 'roughness', mark: 'µin', per: fraction(25_400n), decimals: 0 },
  um: { family: 'roughness', mark: 'µm', per: fraction(1_000_000n), decimals: 2 },
  lbf: { family: 'force', mark: 'lbf', per: POUND_FORCE, decimals: 1 },
  N: { family: 'force', mark: 'N', per: fraction(1_000_000n), decimals: 0 },
  'lbf/in': { family: 'spring_rate', mark: 'lbf/in', per: fraction(444_822_161_526_050n, 2_540_000n), decimals: 0 },
  'N/mm': { family: 'spring_rate', mark: 'N/mm', per: fraction(1_000_000_000n), decimals: 1 },
  psi: { family: 'pressure', mark: 'psi', per: fraction(44_482_216_152_605n, 6_451_600n), decimals: 0 },
  kPa: { family: 'pressure', mark: 'kPa', per: fraction(1_000_000n), decimals: 0 },
  bar: { family: 'pressure', mark: 'bar', per: fraction(100_000_000n), decimals: 2 },
  inHg: { family: 'pressure', mark: 'inHg', per: fraction(3_386_388_640_341n, 1_000_000n), decimals: 1 },
  cc: { family: 'volume', mark: 'cc', per: fraction(1_000_000n), decimals: 1 },
  in3: { family: 'volume', mark: 'in³', per: fraction(16_387_064n), decimals: 3 },
  deg: { family: 'angle', mark: '°', per: fraction(1_000_000n), decimals: 1 },
  degC: { family: 'temperature', mark: '°C', per: fraction(1000n), decimals: 0 },
  degF: { family: 'temperature', mark: '°F', per: fraction(5000n, 9n), zero: fraction(-160_000n, 9n), decimals: 0 },
  s: { family: 'duration', mark: 's', per: fraction(1n), decimals: 0 },
  min: { family: 'duration', mark: 'min', per: fraction(60n), decimals: 0 },
  h: { family: 'duration', mark: 'h', per: fraction(3600n), decimals: 1 },
  'lbf.ft': { family: 'torque', mark: 'lbf·ft', per: fraction(13_558_179_483_314_004n, 10_000_000_000n), decimals: 0 },
  'lbf.in': { family: 'torque', mark: 'lbf·in', per: fraction(1_129_848_290_276_167n, 10_000_000_000n), decimals: 0 },
  'N.m': { family: 'torque', mark: 'N·m', per: fraction(1_000_000n), decimals: 0 },
  kg: { family: 'mass', mark: 'kg', per: fraction(1000n), decimals: 1 },
  g: { family: 'mass', mark: 'g', per: fraction(1n), decimals: 0 },
  lb: { family: 'mass', mark: 'lb', per: fraction(45_359_237n, 100_000n), decimals: 1 },
  count: { family: 'count', mark: '', per: fraction(1n), decimals: 0 },
  ratio: { family: 'ratio', mark: '', per: fraction(10_000n), decimals: 2 },
} as const satisfies Record<string, UnitShape>;

/** Code of a unit, as kept in the file. */
export type UnitCode = keyof typeof UNITS;

export const UNIT_CODES = Object.keys(UNITS) as UnitCode[];

/** True when this text is the code of a unit. */
export const isUnitCode = (text: string): text is UnitCode => Object.hasOwn(UNITS, text);

/** Family, printed mark, factor and usual decimals of a unit. */
export const unitShape = (unit: UnitCode): UnitShape => UNITS[unit];

/** The units of a family, the inch one first; empty for words. */
export const unitsOf = (family: Family): UnitCode[] => UNIT_CODES.filter((code) => UNITS[code].family === family);

/** Families whose base unit holds every inch and metric figure we accept without rounding. */
export const isExactFamily = (family: Family): boolean => family === 'length' || family === 'roughness';

/** Unit that goes with inch or metric work for a family; null for words. */
export function usualUnit(family: Family, system: 'inch' | 'metric'): UnitCode | null {
  const [inch, metric] = USUAL[family] ?? [null, null];
  return system === 'inch' ? inch : metric;
}

const USUAL: Partial<Record<Family, readonly [UnitCode, UnitCode]>> = {
  length: ['in', 'mm'],
  roughness: ['uin', 'um'],
  force: ['lbf', 'N'],
  spring_rate: ['lbf/in', 'N/mm'],
  pressure: ['psi', 'kPa'],
  volume: ['cc', 'cc'],
  angle: ['deg', 'deg'],
  temperature: ['degF', 'degC'],
  duration: ['s', 's'],
  torque: ['lbf.ft', 'N.m'],
  mass: ['lb', 'kg'],
  count: ['count', 'count'],
  ratio: ['ratio', 'ratio'],
};

/** The unit of the other system that is shown beside this one; null where both use the same. */
export function otherUnit(unit: UnitCode): UnitCode | null {
  const pair = USUAL[UNITS[unit].family];
  if (!pair || pair[0] === pair[1]) return null;
  return isInch(unit) ? pair[1] : pair[0];
}

const INCH: readonly UnitCode[] = [
  'in',
  'uin',
  'lbf',
  'lbf/in',
  'psi',
  'inHg',
  'in3',
  'degF',
  'lbf.ft',
  'lbf.in',
  'lb',
];
const isInch = (unit: UnitCode): boolean => INCH.includes(unit);

/** Inch or metric, by the unit. */
export const systemOf = (unit: UnitCode): 'inch' | 'metric' => (isInch(unit) ? 'inch' : 'metric');

/**
 * A figure of a unit in base units, exact.
 *
 * @returns a fraction; whole for every accepted length.
 */
export function toBaseExactly(figure: Fraction, unit: UnitCode): Fraction {
  const { per, zero } = unitShape(unit);
  const over = figure.over * per.over;
  const under = figure.under * per.under;
  return zero ? { over: over * zero.under + zero.over * under, under: under * zero.under } : { over, under };
}

/**
 * A base value as a fraction of the unit, exact.
 */
export function fromBaseExactly(value: number, unit: UnitCode): Fraction {
  const { per, zero } = unitShape(unit);
  const base = BigInt(value);
  const over = zero ? base * zero.under - zero.over : base;
  const under = zero ? zero.under : 1n;
  return { over: over * per.under, under: under * per.over };
}

/** A figure of a unit in base units, rounded once (half away from zero). @throws RangeError past 2^53. */
export function toBase(figure: Fraction, unit: UnitCode): number {
  const { over, under } = toBaseExactly(figure, unit);
  return divideRounded(over, under);
}

/** An exact decimal text such as `-0.0375` as a fraction. @throws RangeError for anything else; for figures in code and data. */
export function decimal(text: string): Fraction {
  const found = /^([+-]?)(\d*)\.?(\d*)$/.exec(text);
  const digits = `${found?.[2] ?? ''}${found?.[3] ?? ''}`;
  if (!found || digits === '') throw new RangeError(`not a decimal figure: ${text}`);
  const over = BigInt(digits);
  return { over: found[1] === '-' ? -over : over, under: 10n ** BigInt((found[3] ?? '').length) };
}

/** Base value of a figure written in code or data, for example `measureOf('1.700', 'in')`. @throws RangeError when it is no figure. */
export const measureOf = (text: string, unit: UnitCode): number => toBase(decimal(text), unit);
