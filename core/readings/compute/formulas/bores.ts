/** Bores: taper, roundness, wear and the piston in them. */
import { type Known, type Look, made } from '../look.ts';
import { difference, type Formula, largest, range } from './formula.ts';

const AXES = [
  ['top-x', 'mid-x', 'bot-x'],
  ['top-y', 'mid-y', 'bot-y'],
] as const;

/** All six readings of a bore, axis by axis; null while one is missing. */
function boreReadings(look: Look): Known[][] | null {
  const axes = AXES.map((points) => points.map((point) => look.value('bore', { point })));
  return axes.every((axis) => axis.every((it) => it !== null)) ? (axes as Known[][]) : null;
}

export const BORE_FORMULAS: Readonly<Record<string, Formula>> = {
  'bore-taper': (look) => largest((boreReadings(look) ?? []).map(range)),
  'bore-out-of-round': (look) => {
    const [x = [], y = []] = boreReadings(look) ?? [];
    return largest(x.map((it, depth) => range([it, ...y.slice(depth, depth + 1)])));
  },
  'bore-wear': (look) => {
    const [most, standard] = [largest((boreReadings(look) ?? []).flat()), look.target('bore')];
    return most?.value == null || standard === null ? null : made([most], most.value - standard);
  },
  'piston-clearance': (look) =>
    difference(look.value('bore', { point: 'mid-x', stage: 'after' }), look.either('piston-size')),
};
