/** What was taken off a face and what is left of it. */
import { made } from '../look.ts';
import { difference, type Formula } from './formula.ts';

export const SURFACE_FORMULAS: Readonly<Record<string, Formula>> = {
  'stock-removed': (look) =>
    difference(look.value('thickness', { stage: 'before' }), look.value('thickness', { stage: 'after' })),
  'thickness-left': (look) => {
    const left = look.value('thickness', { stage: 'after' }) ?? look.value('thickness', { stage: 'before' });
    const least = look.low('thickness');
    return left?.value == null || least === null ? null : made([left], left.value - least);
  },
};
