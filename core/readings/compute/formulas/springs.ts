/** Springs: the height with shims, loads and what is left before the coils touch. Arithmetic in spring.ts and shims.ts. */
import { divideRounded } from '../../../kernel/units.ts';
import { heightForShims } from '../height.ts';
import { type Known, type Look, made, unknown } from '../look.ts';
import { chooseShims, readStack, type ShimTask } from '../shims.ts';
import { bindClearance, greatestLift, sealClearance } from '../spring.ts';
import { difference, type Formula, range } from './formula.ts';
import { loadHere, rateHere, sheetSpring, springHere, wholeSpring } from './spring-here.ts';

/** Load at a height that is itself known. */
export function loadFrom(look: Look, height: Known | null): Known | null {
  if (height?.value == null) return null;
  const spring = springHere(look);
  if (!spring) return null;
  if ('missing' in spring) return unknown(spring.missing);
  const load = loadHere(spring, height.value);
  if (load === null) return unknown('shorter than the spring was ever measured: no load claimed');
  const rate = rateHere(spring, height.value);
  const doubt =
    height.uncertainty === null || rate === null
      ? null
      : Math.abs(divideRounded(BigInt(rate) * BigInt(height.uncertainty), 1_000_000_000n));
  return { ...made([height], load, spring.marks), uncertainty: doubt };
}

/** The height the shims must make good, all old shims out. */
export function heightToShim(look: Look): Known | null {
  const read = look.value('installed-height', { stage: 'before' });
  if (read?.value == null) return null;
  const cup = look.either('cup-thickness');
  const old = look.either('old-shim');
  const found = heightForShims({
    height: read.value,
    readOn: look.readOn('installed-height', 'before'),
    cup: cup?.value ?? look.target('cup-thickness'),
    oldShim: old?.value ?? null,
  });
  if ('missing' in found) return unknown(found.missing);
  return made([read, cup, old], found.height, found.note === null ? [] : [found.note]);
}

/**
 * What the choice of shims starts from, or null when the height or the target is not known.
 *
 * @param from another height than the one read: what cutting would make of it
 */
export function shimTaskOf(look: Look, from: Known | null = heightToShim(look)): ShimTask | null {
  const height = from?.value ?? null;
  const target = look.target('height-with-shim') ?? look.target('installed-height');
  const stock = look.stock();
  if (height === null || target === null || stock === null) return null;
  const spring = wholeSpring(look);
  return { height, target, stock, ...(spring && { loadAt: (at: number) => loadHere(spring, at) }) };
}

function heightWithShim(look: Look): Known | null {
  const read = look.value('installed-height', { stage: 'after' });
  if (read?.value != null) return made([read], read.value, ['read with the shims in place']);
  const before = heightToShim(look);
  if (before?.value == null) return before;
  const written = look.words('shims-fitted', 'after');
  const fitted = written === null ? null : readStack(written, look.stocks());
  if (written !== null && fitted === null) return unknown('the shims as written are not sizes of the shop');
  if (fitted) {
    return made([before], before.value - fitted.reduce((sum, it) => sum + it, 0));
  }
  const task = shimTaskOf(look);
  if (!task) return null;
  return { ...made([before], chooseShims(task).height), planned: true };
}

/** Read, of the sheet, or as thick as all its coils of wire together. */
function solidHeight(look: Look): Known | null {
  const known = look.either('solid-height') ?? look.targetKnown('solid-height', 'solid height from the sheet');
  if (known) return known;
  const [wire, coils] = [look.figure('wire-diameter'), look.figure('total-coils')];
  if (wire?.value == null || coils?.value == null) return null;
  const value = divideRounded(BigInt(wire.value) * BigInt(coils.value), 10_000n);
  return { ...made([wire, coils], value, ['solid height from coils and wire, not measured']), uncertainty: null };
}

function coilBind(look: Look): Known | null {
  const [height, lift, solid] = [look.value('height-with-shim'), look.lift(), solidHeight(look)];
  if (height?.value == null || lift?.value == null || solid?.value == null) return null;
  return made([height, lift, solid], bindClearance(height.value, lift.value, solid.value));
}

function mostLift(look: Look): Known | null {
  const [height, solid] = [look.value('height-with-shim'), solidHeight(look)];
  const margin = look.low('coil-bind-clearance');
  if (height?.value == null || solid?.value == null || margin === null) return null;
  return made([height, solid], greatestLift(height.value, solid.value, margin));
}

function sealRoom(look: Look): Known | null {
  const gap = look.either('seal-gap') ?? look.targetKnown('seal-gap', 'gap from the sheet, not measured');
  const lift = look.lift();
  if (gap?.value == null || lift?.value == null) return null;
  return made([gap, lift], sealClearance(gap.value, lift.value));
}

/** What the sheet wants at a height: of the pair, unless the inner spring was tested by itself. */
function wantedLoad(look: Look, height: number): number | null {
  const outer = sheetSpring(look);
  const printed = look.target('spring-load-1');
  const at = outer
    ? loadHere({ outer, inner: null, marks: [] }, height)
    : height === look.target('spring-height-1')
      ? printed
      : null;
  const inner = sheetSpring(look, 'inner');
  const step = look.figure('inner-step')?.value ?? null;
  const isApart = look.value('inner-load-1', { stage: 'after' })?.value != null;
  if (!inner || isApart) return at;
  const more = step === null ? null : loadHere({ outer: inner, inner: null, marks: [] }, height - step);
  return at === null || more === null ? null : at + more;
}

/** A part of a whole in ten-thousandths. */
const shareOf = (part: number, whole: number): number => divideRounded(BigInt(part) * 10_000n, BigInt(whole));

/** Tested load as a share of the sheet's load at the same height. */
function strength(look: Look): Known | null {
  const load = look.value('spring-load-1', { stage: 'after' });
  const height = look.value('spring-height-1', { stage: 'after' })?.value ?? look.target('spring-height-1');
  if (load?.value == null || height === null) return null;
  const wanted = wantedLoad(look, height);
  if (!wanted || wanted <= 0) return null;
  return {
    ...made([load], shareOf(load.value, wanted)),
    uncertainty: load.uncertainty === null ? null : shareOf(load.uncertainty, wanted),
  };
}

/** Springs of one head by their strength, or by their load where the sheet has none; weakest and strongest are compared. */
const setOf = (look: Look): readonly Known[] => {
  const [shares, loads] = (['spring-strength', 'spring-load-1'] as const).map((quantity) =>
    look.all(quantity, { stage: 'after' }).map((it) => it.known),
  );
  return shares && shares.length === loads?.length ? shares : (loads ?? []);
};

function match(look: Look): Known | null {
  const set = setOf(look);
  const most = Math.max(...set.map((it) => it.value ?? 0));
  const quantities = ['spring-strength', 'spring-load-1'] as const;
  const here = quantities.map((it) => look.value(it, { stage: 'after' })).find((it) => it !== null && set.includes(it));
  return here?.value == null || set.length < 2 || most <= 0 ? null : made([here], shareOf(here.value, most));
}

function weakestOfSet(look: Look): Known | null {
  const set = setOf(look);
  const values = set.flatMap((it) => it.value ?? []);
  const most = Math.max(...values);
  return values.length < 2 || most <= 0 ? null : made(set, shareOf(Math.min(...values), most));
}

function rate(look: Look): Known | null {
  const spring = wholeSpring(look);
  const value = spring && rateHere(spring);
  return value == null ? null : made([], value, spring?.marks);
}

const allOf = (look: Look, quantity: string): readonly Known[] =>
  look.all(quantity, { stage: 'after' }).map((it) => it.known);

export const SPRING_FORMULAS: Readonly<Record<string, Formula>> = {
  'height-with-shim': heightWithShim,
  'open-height': (look) => difference(look.value('height-with-shim'), look.lift()),
  'seat-load': (look) => loadFrom(look, look.value('height-with-shim')),
  'open-load': (look) => loadFrom(look, look.value('open-height')),
  'coil-bind-clearance': coilBind,
  'greatest-lift': mostLift,
  'seal-clearance': sealRoom,
  'spring-strength': strength,
  'spring-match': match,
  'spring-set': weakestOfSet,
  'spring-rate': rate,
  'height-spread': (look) => range(allOf(look, 'height-with-shim')),
  'seat-load-spread': (look) => range(allOf(look, 'seat-load')),
};
