/** Choosing one size for the bores of a block. */
import { z } from 'zod';
import { command, query } from '../../kernel/contract.ts';
import type { ReadingId } from '../../kernel/ids.ts';
import { idOf } from '../../kernel/schemas.ts';
import type { OversizeChoice } from '../compute/oversize-model.ts';

const asked = {
  casting: idOf<'casting'>(),
  /** Only these cylinders are bored; left out: all. One alone makes an odd engine and is warned of. */
  only: z.array(idOf<'spot'>()).min(1).max(48).nullable().default(null),
  /** Cylinders sleeved back to the size of the others: their wear does not count. */
  sleeves: z.array(idOf<'spot'>()).max(48).default([]),
};

export const oversizeContract = {
  /** Every size on the list by both rules. Keeps nothing. */
  'readings/get-oversize-choice': query({
    may: 'castings:see',
    input: z.strictObject(asked),
    output: z.custom<OversizeChoice>(),
  }),
  /**
   * The machinist's choice: the finished size is written as `bore-wanted` for each cylinder asked, sleeved ones too. A size
   * that does not pass by the rule is refused: `readings/oversize-refused`. A set of pistons that was not measured is asked
   * about: `readings/pistons-not-measured`; send again with `sure`.
   */
  'readings/use-oversize': command({
    may: 'floor:work',
    input: z.strictObject({
      ...asked,
      operation: idOf<'operation'>().nullable().default(null),
      /** Code of the candidate. */
      oversize: z.string().min(1).max(20),
      rule: z.enum(['centred', 'original']),
      sure: z.boolean().default(false),
    }),
    output: z.custom<Readonly<{ readings: readonly ReadingId[]; words: string }>>(),
  }),
} as const;
