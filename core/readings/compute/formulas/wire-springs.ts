/** A spring by its wire and by its free length: checks on a tester, never a specification. */
import { measureOf } from '../../../kernel/measure-units.ts';
import { divideRounded } from '../../../kernel/units.ts';
import { indexOf, rateOfWire, stressOf, surgeOf, type WireSpring } from '../geometry/wire-spring.ts';
import { fromSheet, type Known, type Look, made, madeBy, unknown } from '../look.ts';
import { loadAt } from '../spring.ts';
import { difference, type Formula } from './formula.ts';
import { springHere } from './spring-here.ts';

/**
 * Shear modulus by wire. Spring steel: EN 10270-1 value as an EN 13906-1 report shows it. Music wire: a published table of a
 * spring maker, name withheld. Chrome silicon: from memory.
 */
const SHEAR: Readonly<Record<string, number>> = {
  'spring steel': measureOf('81500000', 'kPa'),
  'music wire': measureOf('11500000', 'psi'),
  'chrome silicon': measureOf('11200000', 'psi'),
};

/** Bounds the formula is meant for, EN 13906-1: ten-thousandths, and wire in nanometres. */
const INDEX = { least: 40_000, most: 120_000 };
const LEAST_COILS = 20_000;
const MOST_WIRE = measureOf('20', 'mm');

/** A figure of the sheet or read, else by the kind of wire. */
function shearOf(look: Look): Known | null {
  const known = look.figure('shear-modulus');
  if (known) return known;
  const kind = look.words('wire-kind', 'after') ?? look.words('wire-kind', 'before');
  const value = kind === null ? undefined : SHEAR[kind];
  return value === undefined ? null : fromSheet(value, `shear modulus usual for ${kind}`);
}

/** Closed and ground ends: two coils do not work. Common practice, no source. */
function activeCoils(look: Look): Known | null {
  const all = look.figure('total-coils');
  if (all?.value == null) return look.targetKnown('active-coils', 'working coils from the sheet');
  return all.value <= 20_000
    ? null
    : made([all], all.value - 20_000, ['two coils less than all: closed and ground ends']);
}

type Parts = Readonly<{ wire: Known; outside: Known; mean: Known; shear: Known | null; active: Known | null }>;

/** Wire and mean coil diameter; null while one is not known or the coil is no coil. */
function partsOf(look: Look): Parts | null {
  const [wire, outside] = [look.figure('wire-diameter'), look.figure('spring-outside')];
  const mean = difference(outside, wire);
  if (wire?.value == null || outside === null || mean?.value == null) return null;
  if (wire.value <= 0 || mean.value <= wire.value) return null;
  return { wire, outside, mean, shear: shearOf(look), active: look.either('active-coils') };
}

/**
 * Exponents of wire and outside diameter where a figure goes with `wire ^ w` and `mean coil ^ m`: the mean coil is the outside
 * less the wire, so that the doubt of the wire counts in both.
 */
function exponents({ wire, outside, mean }: Parts, w: number, m: number): [Known, number][] {
  const coil = mean.value ?? 1;
  return [
    [wire, w - (m * (wire.value ?? 0)) / coil],
    [outside, (m * (outside.value ?? 0)) / coil],
  ];
}

function wireSpringOf({ wire, mean, shear, active }: Parts): WireSpring | null {
  if (!shear?.value || !active?.value || wire.value === null || mean.value === null) return null;
  return { wire: wire.value, mean: mean.value, shear: shear.value, active: active.value };
}

/** Why the formula is not meant for this spring. It warns and reckons all the same. */
function boundsMarks(parts: Parts): string[] {
  const index = indexOf({ wire: parts.wire.value ?? 1, mean: parts.mean.value ?? 1 });
  return [
    ...(index < INDEX.least || index > INDEX.most ? ['spring index not within 4 to 12: beyond EN 13906-1'] : []),
    ...((parts.active?.value ?? LEAST_COILS) < LEAST_COILS ? ['fewer than 2 working coils: beyond EN 13906-1'] : []),
    ...((parts.wire.value ?? 0) > MOST_WIRE ? ['wire over 20 mm: beyond EN 13906-1'] : []),
  ];
}

/** A figure made by powers of the wire, the coil and the rest, each with its exponent. */
function byPowers(value: number, marks: readonly string[], parts: readonly (readonly [Known | null, number])[]): Known {
  const slopes = parts.map(([known, power]) => [known, known?.value ? (power * value) / known.value : 0] as const);
  return madeBy(slopes, value, marks);
}

/** What is still to be known before anything can be said of the wire. */
const WANTED = 'kind of wire (or its shear modulus) and number of coils are wanted too';

function wireRate(look: Look): Known | null {
  const parts = partsOf(look);
  if (!parts) return null;
  const spring = wireSpringOf(parts);
  if (!spring) return unknown(WANTED);
  return byPowers(rateOfWire(spring), boundsMarks(parts), [
    ...exponents(parts, 4, -3),
    [parts.shear, 1],
    [parts.active, -1],
  ]);
}

function index(look: Look): Known | null {
  const parts = partsOf(look);
  if (!parts) return null;
  const value = indexOf({ wire: parts.wire.value ?? 1, mean: parts.mean.value ?? 1 });
  return byPowers(value, boundsMarks(parts), exponents(parts, -1, 1));
}

/** In the outer spring with the valve open, where the stress is greatest. */
function stress(look: Look): Known | null {
  const parts = partsOf(look);
  const spring = springHere(look);
  const height = look.value('open-height');
  if (!parts || !spring || 'missing' in spring || height?.value == null) return null;
  const load = loadAt(spring.outer, height.value);
  if (load === null) return unknown('shorter than the spring was ever measured: no stress claimed');
  const value = stressOf({ wire: parts.wire.value ?? 1, mean: parts.mean.value ?? 1 }, load);
  const marks = [...spring.marks, ...boundsMarks(parts)];
  return { ...made([parts.wire, parts.mean, height], value, marks), uncertainty: null };
}

function surge(look: Look): Known | null {
  const parts = partsOf(look);
  if (!parts) return null;
  const spring = wireSpringOf(parts);
  if (!spring) return unknown(WANTED);
  return byPowers(surgeOf(spring), boundsMarks(parts), [
    ...exponents(parts, 1, -2),
    [parts.active, -1],
    [parts.shear, 0.5],
  ]);
}

/** The cam turns half as fast as a four-stroke engine. */
function surgeMargin(look: Look): Known | null {
  const [cycles, speed] = [look.value('spring-surge'), look.figure('engine-speed')];
  if (cycles?.value == null || speed?.value == null || speed.value <= 0) return null;
  const value = divideRounded(BigInt(cycles.value) * 20_000n, BigInt(speed.value));
  return byPowers(
    value,
    ['four-stroke engine: cam at half its speed'],
    [
      [cycles, 1],
      [speed, -1],
    ],
  );
}

/** Rate from the free length and one load, as tested or as printed: rougher than two loads. */
function freeRate(look: Look): Known | null {
  const free = look.figure('spring-free-length');
  const load =
    look.value('spring-load-1', { stage: 'after' }) ?? look.targetKnown('spring-load-1', 'load from the sheet');
  const height =
    look.value('spring-height-1', { stage: 'after' }) ?? look.targetKnown('spring-height-1', 'height from the sheet');
  if (free?.value == null || load?.value == null || height?.value == null || free.value <= height.value) return null;
  const run = free.value - height.value;
  const value = divideRounded(BigInt(load.value) * 1_000_000_000n, BigInt(run));
  const marks = ['rougher than from two loads'];
  return madeBy(
    [
      [load, 1e9 / run],
      [free, value / run],
      [height, value / run],
    ],
    value,
    marks,
  );
}

export const WIRE_SPRING_FORMULAS: Readonly<Record<string, Formula>> = {
  'active-coils': activeCoils,
  'spring-index': index,
  'spring-rate-wire': wireRate,
  'spring-rate-free': freeRate,
  'spring-stress': stress,
  'spring-surge': surge,
  'surge-margin': surgeMargin,
};
