/** The zod schemas that contracts are written with. Messages a person can meet are written here once. */
import { z } from 'zod';
import { type Day, isDay, isMoment, type Moment } from './days.ts';
import type { Id } from './ids.ts';
import type { Unit } from './units.ts';

const safe = z.int();
const unitSchema = <Name extends string>() => safe.transform((value) => value as Unit<Name>);

export const CentsSchema = unitSchema<'Cents'>();
export const PriceE4Schema = unitSchema<'PriceE4'>();
export const BasisPointsSchema = unitSchema<'BasisPoints'>();
export const FactorSchema = unitSchema<'Factor'>();
export const SecondsSchema = unitSchema<'Seconds'>();
export const NanometresSchema = unitSchema<'Nanometres'>();
export const GramsSchema = unitSchema<'Grams'>();
export const MicrodegreesSchema = unitSchema<'Microdegrees'>();

/** Id of a row of one table, for example `idOf<'ticket'>()`. */
export const idOf = <Table extends string>() =>
  z
    .int()
    .positive()
    .transform((value) => value as Id<Table>);

export const DaySchema = z
  .string()
  .refine(isDay, 'Write the day as year-month-day, for example 2027-05-14.')
  .transform((text) => text as Day);
export const MomentSchema = z
  .string()
  .refine(isMoment, 'A moment is UTC text with milliseconds.')
  .transform((text) => text as Moment);

/**
 * Trimmed text of 1 to `max` characters. Control characters other than tab and line feed are refused, and text is kept in
 * Unicode NFC so that the same name typed on two keyboards is the same text.
 */
export const words = (max: number, what = 'this') =>
  z
    .string()
    .transform((text) => text.normalize('NFC').trim())
    .pipe(
      z
        .string()
        .min(1, `Write ${what}.`)
        .max(max, `Keep ${what} to ${max} characters.`)
        // biome-ignore lint/suspicious/noControlCharactersInRegex: refusing control characters is the purpose.
        .regex(/^[^\u0000-\u0008\u000b-\u001f\u007f]*$/, 'Remove the control characters.'),
    );

/** Like `words`, but empty or missing text becomes null. */
export const optionalWords = (max: number, what = 'this') =>
  z
    .string()
    .nullish()
    .transform((text) => text?.normalize('NFC').trim() || null)
    .pipe(
      z
        .string()
        .max(max, `Keep ${what} to ${max} characters.`)
        // biome-ignore lint/suspicious/noControlCharactersInRegex: refusing control characters is the purpose.
        .regex(/^[^\u0000-\u0008\u000b-\u001f\u007f]*$/, 'Remove the control characters.')
        .nullable(),
    );

/** The version of the row the person was looking at. */
export const SeenVersion = z.int().positive();
