/**
 * What a person types at the bench or the counter, read exactly and never guessed.
 *
 * Accepted: decimals with point or comma, signs, fractions of an inch down to 1/64, thou, a unit mark behind the figure.
 * A bare whole number of a length is read only under an entry rule, else it is a question with its readings.
 * Nothing here rounds a length: what is finer than the base unit is refused.
 */
import {
  decimal,
  type Family,
  type Fraction,
  isExactFamily,
  toBaseExactly,
  type UnitCode,
  unitShape,
  unitsOf,
} from './measure-units.ts';
import { divideRounded } from './units.ts';

/**
 * How bare digits become a figure: the last `decimals` are decimals, or the last `digits` of a figure near the target, or they
 * count steps of a dial, each of the last of `decimals`.
 */
export type EntryRule =
  | Readonly<{ rule: 'none' }>
  | Readonly<{ rule: 'implied'; decimals: number }>
  | Readonly<{ rule: 'steps'; decimals: number }>
  | Readonly<{ rule: 'last_digits'; digits: number; decimals: number }>;

/** How the kept figure came about. */
export type FitMark = 'entered' | 'implied' | 'last_digits';

/** One figure read from typed text. */
export type ReadFigure = Readonly<{
  /** The text that is kept and printed: as typed, or with the digits an entry rule left out. */
  typed: string;
  unit: UnitCode;
  /** In base units of the family. */
  value: number;
  mark: FitMark;
}>;

export type Typed =
  | Readonly<{ kind: 'empty' }>
  | (Readonly<{ kind: 'figure' }> & ReadFigure)
  /** More than one reading is possible: the person chooses. */
  | Readonly<{ kind: 'ask'; question: string; choices: readonly ReadFigure[] }>
  | Readonly<{ kind: 'refused'; code: string; message: string }>;

/** What the field is for. */
export type Field = Readonly<{
  family: Family;
  /** The unit of the row: what a figure with a decimal sign and no mark is in. */
  unit: UnitCode;
  rule?: EntryRule;
  /** Base value expected here, for the last-digits rule and for a whole number that may be meant as it stands. */
  target?: number | null;
  /** Decimals of a bare length in question, by unit. */
  decimals?: Readonly<{ in: number; mm: number }>;
  /** A position may stand below zero; a size may not. */
  signed?: boolean;
}>;

/** Characters of a reading that are kept. */
const LONGEST_TYPED = 20;

type Mark = Readonly<{ unit: UnitCode; times: Fraction }>;
const ONCE: Fraction = { over: 1n, under: 1n };
const THOUSANDTH: Fraction = { over: 1n, under: 1000n };
const MARKS: Readonly<Record<string, readonly Mark[]>> = {
  '"': [{ unit: 'in', times: ONCE }],
  '″': [{ unit: 'in', times: ONCE }],
  inch: [{ unit: 'in', times: ONCE }],
  inches: [{ unit: 'in', times: ONCE }],
  thou: [{ unit: 'in', times: THOUSANDTH }],
  // A micrometre is a length on a micrometer and a roughness on a finish tester; the field decides.
  um: [
    { unit: 'mm', times: THOUSANDTH },
    { unit: 'um', times: ONCE },
  ],
  µin: [{ unit: 'uin', times: ONCE }],
  lb: [
    { unit: 'lb', times: ONCE },
    { unit: 'lbf', times: ONCE },
  ],
  '°': [{ unit: 'deg', times: ONCE }],
  '°c': [{ unit: 'degC', times: ONCE }],
  '°f': [{ unit: 'degF', times: ONCE }],
  ml: [{ unit: 'cc', times: ONCE }],
  'in³': [{ unit: 'in3', times: ONCE }],
  lbf·ft: [{ unit: 'lbf.ft', times: ONCE }],
  lbf·in: [{ unit: 'lbf.in', times: ONCE }],
  'lb-ft': [{ unit: 'lbf.ft', times: ONCE }],
  n·m: [{ unit: 'N.m', times: ONCE }],
  nm: [{ unit: 'N.m', times: ONCE }],
};

/** Half of what a whole number holds exactly, so that differences are exact too. */
const GREATEST = 2n ** 52n;

const refused = (code: string, message: string): Typed => ({ kind: 'refused', code: `measure/${code}`, message });
const NO_FIGURE = 'Type a number with its unit, for example 1.705 or 43.2 mm.';

/** Read what was typed into a field. Never throws; asks rather than guesses. */
export function readTyped(text: string, field: Field): Typed {
  const typed = tidy(text);
  if (typed === '') return { kind: 'empty' };
  if (typed.length > LONGEST_TYPED) {
    return refused('too-long', `That is longer than a reading can be. ${NO_FIGURE}`);
  }
  const parts = /^([+-]?)\s*(\d[\d.,/\s-]*|[.,]\d+)(.*)$/u.exec(typed);
  const body = parts?.[2]?.trim() ?? '';
  const shape = shapeOf(body);
  if (!(parts && shape)) return refused('not-a-figure', `“${typed}” is not a figure. ${NO_FIGURE}`);
  if (shape.kind === 'refused') return shape;
  const suffix = (parts[3] ?? '').trim();
  const mark = suffix === '' ? null : markOf(suffix, field.family);
  if (mark === undefined) return refused('wrong-unit', unitMessage(suffix, field.family));
  const negative = parts[1] === '-';
  if (negative && field.signed !== true) {
    return refused('below-zero', 'A size is never below zero. Type it without the minus.');
  }
  if (mark === null && shape.kind === 'whole') return readBare(typed, body, negative, field);
  return finish(typed, shape, mark, negative, field);
}

/** Spaces, minus signs and primes as keyboards and clipboards write them, in one spelling. */
const tidy = (text: string): string =>
  text
    .normalize('NFC')
    .trim()
    .replace(/[\u2212\u2013]/gu, '-')
    .replace(/[\u201c\u201d\u2033]|''/gu, '"')
    .replace(/\u03bc/gu, '\u00b5')
    .replace(/[\u00a0\u202f\u2009]/gu, ' ');

type Shape =
  | Readonly<{ kind: 'whole' | 'decimal' | 'fraction'; figure: Fraction }>
  | Extract<Typed, { kind: 'refused' }>;

function shapeOf(body: string): Shape | undefined {
  if (/^\d+$/.test(body)) return { kind: 'whole', figure: decimal(body) };
  if (/^\d*[.,]\d*$/.test(body) && /\d/.test(body)) {
    return { kind: 'decimal', figure: decimal(body.replace(',', '.')) };
  }
  if (/^[\d.,]+$/.test(body)) {
    return refused('grouping', 'Point and comma both: write the figure without grouping, for example 1234.5.') as Shape;
  }
  const part = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)$/.exec(body);
  if (!part) return undefined;
  const under = BigInt(part[3] ?? 0);
  if (![2n, 4n, 8n, 16n, 32n, 64n].includes(under)) {
    return refused('fraction', 'Fractions of an inch are halves down to 1/64. Type decimals instead.') as Shape;
  }
  return { kind: 'fraction', figure: { over: BigInt(part[1] ?? 0) * under + BigInt(part[2] ?? 0), under } };
}

/** The mark's unit within the family; undefined when it is unknown or of another family. */
function markOf(suffix: string, family: Family): Mark | undefined {
  const text = suffix.toLowerCase().replace('\u00b5m', 'um');
  const code = unitsOf(family).find((unit) => unit.toLowerCase() === text);
  if (code) return { unit: code, times: ONCE };
  return MARKS[text]?.find((mark) => unitShape(mark.unit).family === family);
}

function unitMessage(suffix: string, family: Family): string {
  const units = unitsOf(family).map((unit) => unitShape(unit).mark || unit);
  return units.length === 0 ? NO_FIGURE : `“${suffix}” does not fit here. Type it in ${units.join(' or ')}.`;
}

function finish(
  typed: string,
  shape: Exclude<Shape, { kind: 'refused' }>,
  mark: Mark | null,
  negative: boolean,
  field: Field,
): Typed {
  if (shape.kind === 'fraction' && (field.family !== 'length' || mark?.unit === 'mm')) {
    return refused('fraction', 'Only inches are written as fractions. Type decimals.');
  }
  const isLarge = shape.figure.over >= shape.figure.under;
  if (mark === null && shape.kind === 'decimal' && field.rule?.rule === 'steps' && isLarge) {
    return askBare(typed.replace(/[\s+]/g, '').replace(',', '.'), field);
  }
  const unit = mark?.unit ?? (shape.kind === 'fraction' ? 'in' : field.unit);
  const { over, under } = shape.figure;
  const times = mark?.times ?? ONCE;
  return figureOf(typed, { over: (negative ? -over : over) * times.over, under: under * times.under }, unit, 'entered');
}

function figureOf(typed: string, figure: Fraction, unit: UnitCode, mark: FitMark): Typed {
  const { over, under } = toBaseExactly(figure, unit);
  const { family } = unitShape(unit);
  if (isExactFamily(family) && over % under !== 0n) {
    return refused('too-fine', `That is finer than can be kept. Inch goes to 5 decimals, ${metricEnd(family)}.`);
  }
  if (abs(over / under) > GREATEST) {
    return refused('too-big', `That is bigger than anything here can be. ${NO_FIGURE}`);
  }
  return { kind: 'figure', typed, unit, value: divideRounded(over, under), mark };
}

const metricEnd = (family: Family): string => (family === 'length' ? 'mm to 6' : 'µm to 6, µin to 1');

/** Bare digits: by the entry rule where there is one; a length without one is a question. */
function readBare(typed: string, digits: string, negative: boolean, field: Field): Typed {
  const sign = negative ? '-' : '';
  if (field.family !== 'length' || /^0+$/.test(digits)) {
    return figureOf(typed, decimal(sign + digits), field.unit, 'entered');
  }
  const rule = field.rule ?? { rule: 'none' };
  if (rule.rule === 'steps') {
    const full = sign + withPoint(digits, rule.decimals);
    return figureOf(full, decimal(full), field.unit, 'implied');
  }
  if (rule.rule === 'implied' && digits.length >= rule.decimals && digits.length <= rule.decimals + 2) {
    const full = sign + withPoint(digits, rule.decimals);
    return figureOf(full, decimal(full), field.unit, 'implied');
  }
  if (rule.rule === 'last_digits' && digits.length === rule.digits && field.target != null) {
    const near = nearTarget(digits, rule, field.target, field.unit);
    if (near !== null) return figureOf(near, decimal(near), field.unit, 'last_digits');
  }
  return askBare(sign + digits, field);
}

/** `3438` with 4 decimals: `0.3438`. */
function withPoint(digits: string, decimals: number): string {
  if (decimals === 0) return digits;
  const padded = digits.padStart(decimals + 1, '0');
  return `${padded.slice(0, -decimals)}.${padded.slice(-decimals)}`;
}

/**
 * The figure nearest the target that ends in these digits; null when it lies farther off than a quarter of the span of
 * those digits, because then the digits before them are not sure.
 */
function nearTarget(digits: string, rule: { digits: number; decimals: number }, target: number, unit: UnitCode) {
  const span = 10n ** BigInt(rule.digits);
  const { over, under } = toBaseExactly({ over: 1n, under: 10n ** BigInt(rule.decimals) }, unit);
  // Everything below is in steps of the last decimal, times `over`, so that it stays whole.
  const wanted = BigInt(target) * under;
  const last = BigInt(digits);
  const turns = (wanted - last * over) / (span * over);
  const candidates = [turns - 1n, turns, turns + 1n].map((n) => n * span + last).filter((step) => step >= 0n);
  const distance = (step: bigint) => abs(step * over - wanted);
  const best = candidates.reduce((a, b) => (distance(b) < distance(a) ? b : a));
  if (distance(best) * 4n > span * over) return null;
  return withPoint(best.toString(), rule.decimals);
}

const abs = (n: bigint): bigint => (n < 0n ? -n : n);

/**
 * `30`: 0.030 in? 0.30 mm? And as it stands, where that is near what is expected. `28.5` on a dial may be steps and a part of
 * one, or a figure after all; below one it is a figure.
 */
function askBare(digits: string, field: Field): Typed {
  const places = field.decimals ?? { in: 3, mm: 2 };
  const sign = digits.startsWith('-') ? '-' : '';
  const bare = sign === '' ? digits : digits.slice(1);
  // The unit stands in the text, so that the choice is read back as a figure and not asked again.
  const read = (text: string, unit: UnitCode) => figureOf(`${text} ${unit}`, decimal(text), unit, 'entered');
  const part = bare.includes('.') ? bare.length - bare.indexOf('.') - 1 : 0;
  const steps = (unit: 'in' | 'mm') => read(sign + withPoint(bare.replace('.', ''), places[unit] + part), unit);
  const candidates =
    field.rule?.rule === 'steps' && (field.unit === 'in' || field.unit === 'mm')
      ? [steps(field.unit), read(digits, field.unit)]
      : [
          steps('in'),
          steps('mm'),
          ...(['in', 'mm'] as const).map((unit) => read(digits, unit)).filter((it) => isNear(it, field.target)),
        ];
  const choices = candidates.flatMap((it) => (it.kind === 'figure' ? [asFigure(it)] : []));
  const readings = choices.map((it) => `${it.typed}?`).join(' ');
  return { kind: 'ask', question: `${digits} can be read more than one way: ${readings}`, choices };
}

const asFigure = ({ typed, unit, value, mark }: ReadFigure): ReadFigure => ({ typed, unit, value, mark });

/** Within half and double of what is expected. */
const isNear = (it: Typed, target: number | null | undefined): boolean =>
  it.kind === 'figure' && target != null && target > 0 && it.value * 2 >= target && it.value <= target * 2;

/**
 * The kept text read again: `typed` and `unit` give `value`, whatever entry rule stood at the time.
 *
 * @returns the base value; null when the text is no figure.
 */
export function valueOfTyped(typed: string, unit: UnitCode): number | null {
  const read = readTyped(typed, { family: unitShape(unit).family, unit, signed: true });
  return read.kind === 'figure' ? read.value : null;
}
