/** Counts, words and results that operations leave behind. */
import { free, type Quantity, quantity, tally, word } from '../quantity.ts';

export const RECORDS: readonly Quantity[] = [
  quantity('part-counts', 'parts counted', tally),
  quantity('cap-count', 'caps counted', tally),
  quantity('pin-count', 'pins set', tally),
  quantity('wash-method', 'washed by', word),
  quantity('oven-programme', 'oven programme', word),
  quantity('crack-result', 'crack result', {
    ...word,
    choices: ['none found', 'crack found', 'repaired', 'cannot tell'],
  }),
  quantity('crack-map', 'where the cracks are', free),
  quantity('pressure-held', 'pressure held', { family: 'pressure', under: 'too low', over: 'too high' }),
  quantity('weld-record', 'weld record', free),
  quantity('hole-place', 'which hole', free),
  quantity('plug-map', 'plugs out and in', free),
  quantity('torque-done', 'torqued', { ...word, choices: ['done', 'not done'] }),
  quantity('cleaned-by', 'cleaned', free),
];
