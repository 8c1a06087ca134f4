/** Springs: the height with shims, loads and what is left before the coils touch. Arithmetic in spring.ts and shims.ts. */
import { divideRounded } from '../../../kernel/units.ts';
import { heightForShims } from '../height.ts';
import { type Known, type Look, made, unknown } from '../look.ts';
import { chooseShims, readStack } from '../shims.ts';
import { bindClearance, greatestLift, loadAt, loadUncertainty, rateOf, sealClearance, springOf } from '../spring.ts';
import { difference, type Formula } from './formula.ts';

/** The spring under this valve: its own tested line where there is one, else the sheet's figures. */
function springHere(look: Look) {
  const heights = [look.target('spring-height-1'), look.target('spring-height-2')] as const;
  const tested = ([1, 2] as const).flatMap((n) => {
    const load = look.value(`spring-load-${n}`, { stage: 'after' })?.value ?? null;
    const height = look.value(`spring-height-${n}`, { stage: 'after' })?.value ?? heights[n - 1] ?? null;
    return load === null || height === null ? [] : [{ height, load }];
  });
  const own = springOf(tested, true);
  if (own) return own;
  const sheet = ([1, 2] as const).flatMap((n) => {
    const [load, height] = [look.target(`spring-load-${n}`), heights[n - 1] ?? null];
    return load === null || height === null ? [] : [{ height, load }];
  });
  return springOf(sheet, false);
}

const NOMINAL_SPRING = 'calculated, nominal spring';
const OWN_SPRING = 'calculated, this spring as tested';

/** Load at a height that is itself known. */
function loadFrom(look: Look, height: Known | null): Known | null {
  const spring = springHere(look);
  if (!spring || height?.value == null) return null;
  const load = loadAt(spring, height.value);
  if (load === null) return unknown('shorter than the spring was ever measured: no load claimed');
  const uncertainty = loadUncertainty(spring, height.value, height.uncertainty);
  return { ...made([height], load, [spring.tested ? OWN_SPRING : NOMINAL_SPRING]), uncertainty };
}

/** The height the shims must make good, all old shims out. */
function heightToShim(look: Look): Known | null {
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

/** The best stack for this valve, or null when the height or the target is not known. */
export function shimTaskOf(look: Look) {
  const height = heightToShim(look)?.value ?? null;
  const target = look.target('height-with-shim') ?? look.target('installed-height');
  const stock = look.stock();
  if (height === null || target === null || stock === null) return null;
  const spring = springHere(look);
  return { height, target, stock, ...(spring && { loadAt: (at: number) => loadAt(spring, at) }) };
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

const openHeight = (look: Look): Known | null => difference(look.value('height-with-shim'), look.lift());

function coilBind(look: Look): Known | null {
  const [height, lift] = [look.value('height-with-shim'), look.lift()];
  const solid = look.either('solid-height') ?? look.targetKnown('solid-height', 'solid height from the sheet');
  if (height?.value == null || lift?.value == null || solid?.value == null) return null;
  return made([height, lift, solid], bindClearance(height.value, lift.value, solid.value));
}

function mostLift(look: Look): Known | null {
  const height = look.value('height-with-shim');
  const solid = look.either('solid-height') ?? look.targetKnown('solid-height', 'solid height from the sheet');
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

/** Tested load as a share of the sheet's load at the same height. */
function strength(look: Look): Known | null {
  const load = look.value('spring-load-1', { stage: 'after' });
  const [h1, h2] = [look.target('spring-height-1'), look.target('spring-height-2')];
  const [f1, f2] = [look.target('spring-load-1'), look.target('spring-load-2')];
  if (load?.value == null || h1 === null || f1 === null) return null;
  const height = look.value('spring-height-1', { stage: 'after' })?.value ?? h1;
  const sheet =
    h2 === null || f2 === null
      ? null
      : springOf(
          [
            { height: h1, load: f1 },
            { height: h2, load: f2 },
          ],
          false,
        );
  const wanted = height === h1 ? f1 : sheet && loadAt(sheet, height);
  if (!wanted || wanted <= 0) return null;
  const share = (part: number) => divideRounded(BigInt(part) * 10_000n, BigInt(wanted));
  return {
    ...made([load], share(load.value)),
    uncertainty: load.uncertainty === null ? null : share(load.uncertainty),
  };
}

function rate(look: Look): Known | null {
  const spring = springHere(look);
  const value = spring && rateOf(spring);
  return value == null ? null : made([], value, [spring?.tested ? OWN_SPRING : NOMINAL_SPRING]);
}

export const SPRING_FORMULAS: Readonly<Record<string, Formula>> = {
  'height-with-shim': heightWithShim,
  'seat-load': (look) => loadFrom(look, look.value('height-with-shim')),
  'open-load': (look) => loadFrom(look, openHeight(look)),
  'coil-bind-clearance': coilBind,
  'greatest-lift': mostLift,
  'seal-clearance': sealRoom,
  'spring-strength': strength,
  'spring-rate': rate,
};
