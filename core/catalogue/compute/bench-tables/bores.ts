/** Bores of a block: readings before and after, what they make, the pistons of the set, and how the hone ran. */

import { after, type BenchTable, before, hiddenAfter, hiddenBefore } from '../bench-table.ts';
import { OVERSIZES } from '../oversizes.ts';

const USUAL = ['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'] as const;
/** More levels and axes, for liners and two-strokes. */
const MORE = ['up-x', 'low-x', 'up-y', 'low-y', 'top-a', 'mid-a', 'bot-a', 'top-b', 'mid-b', 'bot-b'] as const;

export const BORE_TABLES: readonly BenchTable[] = [
  {
    code: 'bores',
    words: 'Bores',
    castingKind: 'block',
    spotKind: 'cylinder',
    operation: 'measure-block',
    rows: [
      ...USUAL.map((point) => before('bore', point)),
      ...MORE.map((point) => hiddenBefore('bore', point)),
      before('bore-taper'),
      hiddenBefore('bore-taper-simple'),
      before('bore-out-of-round'),
      before('bore-wear'),
      hiddenBefore('bore-largest'),
      hiddenBefore('score-depth'),
      hiddenBefore('wall-thickness'),
      hiddenBefore('centre-shift'),
      before('piston-size'),
      before('bore-wanted'),
      hiddenBefore('wall-left'),
      ...USUAL.map((point) => after('bore', point)),
      ...MORE.map((point) => hiddenAfter('bore', point)),
      hiddenAfter('bore', 'gauge-x'),
      after('bore-taper'),
      hiddenAfter('bore-taper-simple'),
      after('bore-out-of-round'),
      after('bore-error'),
      after('piston-clearance'),
      hiddenAfter('crosshatch'),
      hiddenAfter('bore-finish'),
    ],
  },
  {
    code: 'pistons',
    words: 'Pistons and boring',
    castingKind: 'block',
    spotKind: null,
    operation: null,
    rows: [
      ...OVERSIZES.map(({ code }) => before('piston-offered', code)),
      before('hone-allowance'),
      before('clean-up'),
      hiddenBefore('bore-present'),
      hiddenBefore('bore-greatest'),
      ...(['top', 'mid', 'bot'] as const).map((point) => hiddenBefore('bore-depth', point)),
    ],
  },
  {
    code: 'honing',
    words: 'Honing',
    castingKind: 'block',
    spotKind: null,
    operation: null,
    rows: [
      after('hone-speed'),
      after('hone-strokes'),
      after('hone-stroke'),
      after('hone-stones'),
      after('ring-facing'),
    ],
  },
  {
    code: 'rings',
    words: 'Piston rings',
    castingKind: 'block',
    spotKind: 'cylinder',
    operation: 'ring-fit',
    rows: [
      after('ring-wanted-top'),
      after('ring-gap-top'),
      after('ring-spare-top'),
      after('ring-wanted-second'),
      after('ring-gap-second'),
      after('ring-spare-second'),
      hiddenAfter('ring-side-top'),
      hiddenAfter('ring-side-second'),
      hiddenBefore('ring-growth'),
    ],
  },
];
