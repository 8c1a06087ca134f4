/** What an account may owe, when it pays, whether it is on stop, and its tax certificates. Set by books or the owner. */
import { z } from 'zod';
import { Amount, Percent, STATEMENTS } from '../customers/contract.ts';
import { command, query } from '../kernel/contract.ts';
import { DaySchema, idOf, optionalWords, SeenVersion, words } from '../kernel/schemas.ts';

const customerId = idOf<'customer'>();

export const termsContract = {
  'customers/put-on-stop': command({
    may: 'accounts:edit',
    input: z.strictObject({ customerId, seenVersion: SeenVersion, why: words(240, 'why the account is on stop') }),
    output: z.object({ version: z.int() }),
  }),
  'customers/lift-stop': command({
    may: 'accounts:edit',
    input: z.strictObject({ customerId, seenVersion: SeenVersion, why: words(240, 'why the stop is lifted') }),
    output: z.object({ version: z.int() }),
  }),
  'customers/set-terms': command({
    may: 'accounts:edit',
    input: z.strictObject({
      customerId,
      seenVersion: SeenVersion,
      /** Code of the terms, for example `net30`. */
      terms: words(40, 'the terms').optional(),
      /** Null for no limit. */
      creditLimit: Amount.nullable().optional(),
      labourDiscount: Percent.optional(),
      partsDiscount: Percent.optional(),
      priceList: words(40, 'the price list').optional(),
      statement: z.enum(STATEMENTS).optional(),
      /** How far above an authorised amount work may run; needs the customer's signed paper. */
      overrun: Percent.optional(),
      overrunProof: idOf<'attachment'>().nullable().optional(),
    }),
    output: z.object({ version: z.int() }),
  }),
  'customers/add-terms': command({
    may: 'accounts:edit',
    input: z.strictObject({
      code: words(40, 'a code'),
      words: words(120, 'the terms in words'),
      kind: z.enum(['on_receipt', 'net', 'end_of_month']),
      days: z.int().min(0).max(365),
      early: z
        .strictObject({ percent: Percent, days: z.int().min(1).max(365) })
        .nullable()
        .default(null),
    }),
    output: z.object({ termsId: idOf<'terms'>() }),
  }),
  'customers/list-terms': query({
    may: 'customers:see',
    input: z.strictObject({}),
    output: z.object({
      terms: z.array(
        z.object({
          termsId: idOf<'terms'>(),
          code: z.string(),
          words: z.string(),
          kind: z.enum(['on_receipt', 'net', 'end_of_month']),
          days: z.int(),
        }),
      ),
    }),
  }),
  'customers/add-exemption': command({
    may: 'accounts:edit',
    input: z.strictObject({
      customerId,
      taxCode: words(40, 'the tax'),
      certificateNo: words(60, 'the number of the certificate'),
      words: optionalWords(160, 'the words'),
      from: DaySchema,
      until: DaySchema.nullable().default(null),
    }),
    output: z.object({ exemptionId: idOf<'tax_exemption'>() }),
  }),
  'customers/end-exemption': command({
    may: 'accounts:edit',
    input: z.strictObject({
      exemptionId: idOf<'tax_exemption'>(),
      on: DaySchema,
      why: optionalWords(240, 'the reason'),
    }),
    output: z.object({}),
  }),
} as const;
