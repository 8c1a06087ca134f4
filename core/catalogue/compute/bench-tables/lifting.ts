/** A table for lifting any kind of casting. The shop's own, and on no paper of a customer. */
import { after, type BenchTable, hiddenAfter } from '../bench-table.ts';

const KINDS: readonly BenchTable['castingKind'][] = [
  'head',
  'block',
  'intake_manifold',
  'exhaust_manifold',
  'crank',
  'rod_set',
  'flywheel',
  'cover',
];

export const LIFTING_TABLES: readonly BenchTable[] = KINDS.map((castingKind) => ({
  code: castingKind === 'head' ? 'lifting' : `${castingKind.replaceAll('_', '-')}-lifting`,
  words: 'Lifting',
  castingKind,
  spotKind: null,
  operation: null,
  offPaper: true,
  notes: [
    'Hoist or a second person when in doubt',
    'The equation is not for one-handed, seated, slippery or unstable lifts, nor for hot castings',
    'Local rules and licensed practice decide',
  ],
  rows: [
    after('lift-weight'),
    after('lift-h'),
    after('lift-v'),
    after('lift-d'),
    after('lift-a'),
    after('lift-coupling'),
    hiddenAfter('lift-count'),
    hiddenAfter('lift-duration'),
    hiddenAfter('lift-h-end'),
    hiddenAfter('lift-v-end'),
    hiddenAfter('lift-a-end'),
    after('lift-limit'),
    after('lift-index'),
  ],
}));
