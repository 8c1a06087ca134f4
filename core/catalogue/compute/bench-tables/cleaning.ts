/** What is read at the wash. The shop's own, and on no paper of a customer. */
import { after, type BenchTable } from '../bench-table.ts';

const cleaning = (code: string, castingKind: BenchTable['castingKind']): BenchTable => ({
  code,
  words: 'Wash',
  castingKind,
  spotKind: null,
  operation: null,
  offPaper: true,
  notes: [
    'Caustic burns skin and eyes: face shield, apron, eye wash in reach; dry caustic goes slowly into cold water, never the other way',
    'Never on aluminium, zinc, tin or lead: it frees hydrogen',
    'Compressed air never on skin, with chip guard and eye protection',
    'Spent solution is waste by law: log drum and day, ask the local office',
  ],
  rows: [after('cleaning-air'), after('spent-bath')],
});

export const CLEANING_TABLES: readonly BenchTable[] = [cleaning('wash', 'head'), cleaning('block-wash', 'block')];
