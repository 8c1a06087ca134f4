/** Guides, stems, seats and the vacuum test. Exact differences; the meaning of the quantities as in TM 9-2815-255-24. */
import type { Known, Look } from '../look.ts';
import { difference, type Formula, largest, range } from './formula.ts';

const GUIDE_POINTS = ['top', 'mid', 'bot', 'top-y', 'mid-y', 'bot-y'];

/** Guide readings at this stage; for "before" those of an earlier step do, for "after" only new ones. */
function guideReadings(look: Look): Known[] {
  const at = (stage: 'before' | 'after') =>
    GUIDE_POINTS.map((point) => look.value('guide-id', { point, stage })).filter((it) => it !== null);
  const here = at(look.place.stage);
  return here.length > 0 || look.place.stage === 'after' ? here : at('after');
}

export const VALVE_FORMULAS: Readonly<Record<string, Formula>> = {
  'guide-clearance': (look) => difference(largest(guideReadings(look)), look.either('stem')),
  'bell-mouth': (look) => range(guideReadings(look)),
  'guide-interference': (look) => difference(look.either('guide-od'), look.either('guide-bore-in-head')),
  'insert-interference': (look) => difference(look.either('insert-od'), look.either('counterbore-id')),
  'vacuum-fall': (look) => difference(look.value('vacuum-start'), look.value('vacuum-end')),
};
