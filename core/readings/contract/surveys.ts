/** Surveys of flatness: one face of a casting with its dial grid, its straightedge lines and what a cut would take. */
import { z } from 'zod';
import { query } from '../../kernel/contract.ts';
import { idOf } from '../../kernel/schemas.ts';
import type { DeckSurvey } from '../compute/deck-survey-model.ts';

export const surveysContract = {
  /**
   * The survey of one face. `face` left out: the first the casting has. Readings are kept with `readings/add-readings`, tried
   * with `readings/get-preview` (table: `face.table`).
   */
  'readings/get-deck-survey': query({
    may: 'castings:see',
    input: z.strictObject({ casting: idOf<'casting'>(), face: z.string().max(40).nullable().default(null) }),
    output: z.custom<DeckSurvey>(),
  }),
} as const;
