/** Parts of a ticket: needed, ordered, here, fitted, returned; what is sold from stock. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { CentsSchema, DaySchema, idOf, optionalWords, PriceE4Schema, SeenVersion } from '../kernel/schemas.ts';
import { PartView, PartWish } from '../lines/contract.ts';

const PartStep = z.object({ version: z.int() });
const SeenPart = { part: idOf<'part_line'>(), seenVersion: SeenVersion };

export const partsContract = {
  /** A part and, unless the customer brings it, its charge. */
  'parts/add-part': command({
    may: 'parts:edit',
    input: z.strictObject({
      ticketId: idOf<'ticket'>(),
      castingId: idOf<'casting'>().nullable().default(null),
      part: PartWish,
    }),
    output: z.object({
      partId: idOf<'part_line'>(),
      lineId: idOf<'work_line'>().nullable(),
      amount: CentsSchema,
      working: z.string(),
    }),
  }),
  'parts/order-part': command({
    may: 'parts:edit',
    input: z.strictObject({
      ...SeenPart,
      supplierWords: optionalWords(120, 'where it was ordered'),
      expectedOn: DaySchema.nullable().default(null),
    }),
    output: PartStep,
  }),
  'parts/mark-back-ordered': command({
    may: 'parts:edit',
    input: z.strictObject({ ...SeenPart, expectedOn: DaySchema.nullable().default(null) }),
    output: PartStep,
  }),
  'parts/receive-part': command({
    may: 'parts:edit',
    input: z.strictObject({ ...SeenPart, count: z.int('Count the pieces.').min(0) }),
    output: PartStep.extend({
      /** Pieces still missing; 0 when all are here. */
      missing: z.int(),
    }),
  }),
  'parts/check-against-job': command({ may: 'parts:edit', input: z.strictObject(SeenPart), output: PartStep }),
  'parts/fit-part': command({ may: 'floor:work', input: z.strictObject(SeenPart), output: PartStep }),
  'parts/return-part': command({ may: 'parts:edit', input: z.strictObject(SeenPart), output: PartStep }),
  'parts/list-parts': query({
    may: 'floor:see',
    input: z.strictObject({ ticketId: idOf<'ticket'>() }),
    output: z.object({ parts: z.array(PartView) }),
  }),
  /** What the counter sells often, with today's list price. */
  'parts/list-stock': query({
    may: 'pricing:see',
    input: z.strictObject({}),
    output: z.object({
      items: z.array(
        z.object({
          id: idOf<'stock_item'>(),
          code: z.string(),
          words: z.string(),
          listPrice: PriceE4Schema.nullable(),
          coreCharge: CentsSchema.nullable(),
        }),
      ),
    }),
  }),
} as const;
