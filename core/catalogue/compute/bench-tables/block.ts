/** Tables of a block. */
import { after, type BenchTable, before, hiddenAfter } from '../bench-table.ts';

export const BLOCK_TABLES: readonly BenchTable[] = [
  {
    code: 'bores',
    words: 'Bores',
    castingKind: 'block',
    spotKind: 'cylinder',
    operation: 'measure-block',
    rows: [
      ...(['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'] as const).map((point) => before('bore', point)),
      before('bore-taper'),
      before('bore-out-of-round'),
      before('bore-wear'),
      before('piston-size'),
      before('bore-wanted'),
      ...(['top-x', 'mid-x', 'bot-x', 'top-y', 'mid-y', 'bot-y'] as const).map((point) => after('bore', point)),
      after('bore-taper'),
      after('bore-out-of-round'),
      after('piston-clearance'),
    ],
  },
  {
    code: 'mains',
    words: 'Main bores',
    castingKind: 'block',
    spotKind: 'main',
    operation: 'main-line-check',
    rows: (['0', '+60', '-60'] as const).flatMap((point) => [
      before('main-size', point),
      hiddenAfter('main-size', point),
    ]),
  },
  {
    code: 'decks',
    words: 'Deck height',
    castingKind: 'block',
    spotKind: 'deck_corner',
    operation: 'deck-block',
    rows: [before('deck-height'), after('deck-height')],
  },
];
