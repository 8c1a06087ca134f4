/**
 * What a cut does to the intake manifold of a V engine, and to a pair of heads that were not cut alike. Geometry in
 * geometry/intake-fit.ts; ports that miss each other by less than about 0.005 in do no harm: common practice, no source.
 */
import { intakeCorrection, portDrop } from '../geometry/intake-fit.ts';
import { type Known, type Look, made, madeBy, unknown } from '../look.ts';
import type { OtherCut } from '../model.ts';
import { bankLeanOf, faceLeanOf, figureOf, meanOf, missing, valueAt } from './engine-data.ts';
import type { Formula } from './formula.ts';
import { sayLength } from './say.ts';

/** Why there is no manifold to correct; null for a V engine. */
const notAVee = (look: Look): string | null => {
  const layout = look.facts.engine?.layout ?? null;
  if (layout === null) return 'engine not known: for a V engine its angle and the lean of the intake face are wanted';
  return layout === 'v' ? null : 'not a V engine';
};

function ports(look: Look): Known | null {
  const why = notAVee(look);
  if (why !== null) return unknown(why);
  const [moved, face, bank] = [valueAt(look, 'head-drop', 'after'), faceLeanOf(look), bankLeanOf(look)];
  if (!moved) return null;
  if (!face) return unknown('measure how far the intake face leans from square to the deck');
  const off = figureOf(look.either('face-removed'));
  const corrected = off && bank ? dropMadeGood(off.value, { bankLean: bank.value, faceLean: face.value }) : 0;
  const drop = portDrop(moved.value, { faceLean: face.value }) - corrected;
  const marks = off ? [`after ${sayLength(look, off.value)} off the intake faces`] : [];
  return { ...made([moved], drop), marks: [...face.marks, ...marks, 'up to about 0.005 in does no harm'] };
}

/** Drop of the ports that a cut of the faces has made good already. */
function dropMadeGood(off: number, vee: Readonly<{ bankLean: number; faceLean: number }>): number {
  const perUnit = intakeCorrection(UNIT, vee);
  return perUnit === null || perUnit.face <= 0 ? 0 : portDrop(Math.round((off * UNIT) / perUnit.face), vee);
}

/** Large enough that a rounded slope is exact to far below a nanometre. */
const UNIT = 1_000_000_000;

function intake(look: Look, part: 'face' | 'bottom'): Known | null {
  const why = notAVee(look);
  if (why !== null) return unknown(why);
  const moved = valueAt(look, 'head-drop', 'after');
  if (!moved) return null;
  const [bank, face] = [bankLeanOf(look), faceLeanOf(look)];
  if (!bank || !face) {
    return unknown(`measure: ${missing({ 'V angle (half of it)': bank, 'lean of the intake face': face }).join(', ')}`);
  }
  const vee = { bankLean: bank.value, faceLean: face.value };
  const found = intakeCorrection(moved.value, vee);
  if (!found) return unknown('faces lie level: milling cannot bring the ports together again');
  const slope = intakeCorrection(UNIT, vee)?.[part] ?? 0;
  const known = madeBy([[moved, slope / UNIT]], found[part]);
  const note =
    part === 'face' ? 'head side or manifold side, both heads cut alike' : 'only where it would touch the block';
  return { ...known, marks: [...bank.marks, ...face.marks, note, ...unlike(look)] };
}

/** `the other head 30918 lost 0.0100 in, this one 0.0250 in`. */
const otherWords = (look: Look, other: OtherCut, own: number): string =>
  `the other head ${other.tag} lost ${sayLength(look, other.removed ?? 0)}, this one ${sayLength(look, own)}`;

/** What unlike cuts do to a manifold; nothing when they are alike or not known. */
function unlike(look: Look): string[] {
  if (look.facts.casting.kind === 'block') return unlikeBanks(look);
  const difference = valueAt(look, 'pair-difference', 'after');
  const most = look.high('pair-difference') ?? 0;
  return difference && difference.value > most ? ['the heads are cut unlike: the manifold tips'] : [];
}

/** Two banks that were finished at one height may each have lost something else. */
function unlikeBanks(look: Look): string[] {
  const corners = look.all('deck-removed', { stage: 'after' });
  const of = (bank: 'left' | 'right') => meanOf(corners.filter(({ spot }) => spot.bank === bank).map((it) => it.known));
  const [left, right] = [of('left'), of('right')];
  const most = look.high('port-drop') ?? 0;
  if (!left || !right || Math.abs(left.value - right.value) <= most) return [];
  return [
    `left bank lost ${sayLength(look, left.value)}, right bank ${sayLength(look, right.value)}: the manifold tips`,
  ];
}

function pairDifference(look: Look): Known | null {
  const own = valueAt(look, 'head-cut', 'after');
  const { pair } = look.facts;
  if (pair.length === 0) return unknown('no other head on this ticket');
  if (!own) return null;
  const measured = pair.filter((it) => it.removed !== null);
  const open = pair.filter((it) => it.removed === null).map((it) => `cut of the other head ${it.tag} not known`);
  if (measured.length === 0) return unknown(open.join('; '));
  const apart = (it: OtherCut) => Math.abs(own.value - (it.removed ?? 0));
  const worst = measured.reduce((most, it) => (apart(it) > apart(most) ? it : most));
  const most = look.high('pair-difference') ?? 0;
  const advice = apart(worst) > most ? ': cut both alike' : '';
  const known = made([own], apart(worst));
  return { ...known, marks: [`${otherWords(look, worst, own.value)}${advice}`, ...open] };
}

export const MANIFOLD_FORMULAS: Readonly<Record<string, Formula>> = {
  'port-drop': ports,
  'intake-face-cut': (look) => intake(look, 'face'),
  'intake-bottom-cut': (look) => intake(look, 'bottom'),
  'pair-difference': pairDifference,
};
