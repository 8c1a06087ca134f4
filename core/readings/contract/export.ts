/** Readings as a file for other programs. */
import { z } from 'zod';
import { query } from '../../kernel/contract.ts';
import { idOf } from '../../kernel/schemas.ts';

export const exportContract = {
  /**
   * Everything read on a casting with limits, verdicts and what was replaced, as the text of a file. CSV is RFC 4180 in UTF-8,
   * JSON says its `version`; both have the same columns (compute/export-text.ts).
   */
  'readings/export-readings': query({
    may: 'castings:see',
    input: z.strictObject({ casting: idOf<'casting'>(), as: z.enum(['csv', 'json']) }),
    output: z.object({
      /** `readings-41170.csv`. */
      fileName: z.string(),
      mime: z.string(),
      text: z.string(),
      /** Rows besides the names of the columns. */
      rows: z.int(),
    }),
  }),
} as const;
