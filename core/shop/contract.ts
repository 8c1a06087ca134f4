/** The shop itself: its title block, settings, hours, numbers, texts; activity and backups. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import {
  BasisPointsSchema,
  CentsSchema,
  DaySchema,
  idOf,
  NanometresSchema,
  optionalWords,
  PriceE4Schema,
  SeenVersion,
  words,
} from '../kernel/schemas.ts';

const Minute = z.int().min(0).max(1440);

/** What every screen needs before anybody is signed in; no customer, no price. */
const ShopFace = z.strictObject({
  /** False: this workspace is empty and waits for the first run. */
  set: z.boolean(),
  name: z.string(),
  shortName: z.string(),
  practice: z.boolean(),
  units: z.enum(['inch', 'metric']),
  showBothUnits: z.boolean(),
  paper: z.enum(['letter', 'a4']),
  currencyCode: z.string(),
  currencySign: z.string(),
  language: z.string(),
  timeZone: z.string(),
  hourClock: z.enum(['24', '12']),
  pinDigits: z.int(),
  idleMinutes: z.int(),
});

/** The settings one by one, as they are typed. */
export const Settings = {
  name: words(240, 'the shop name'),
  shortName: words(40, 'a short name'),
  address: optionalWords(400, 'the address'),
  phone: optionalWords(60, 'the telephone'),
  email: optionalWords(120, 'the e-mail'),
  taxNumber: optionalWords(60, 'the tax number'),
  currencyCode: z.string().regex(/^[A-Z]{3}$/, 'Write the three letters of the currency, for example USD.'),
  currencySign: words(4, 'the currency sign'),
  units: z.enum(['inch', 'metric']),
  showBothUnits: z.boolean(),
  paper: z.enum(['letter', 'a4']),
  language: z.string().regex(/^[a-z]{2}(-[A-Z]{2})?$/, 'Write the language as two letters, for example en.'),
  timeZone: words(60, 'the time zone'),
  minimumLabour: CentsSchema,
  supplies: BasisPointsSchema,
  suppliesCap: CentsSchema.nullable(),
  feePerWash: CentsSchema,
  storagePerDay: CentsSchema,
  storageAfterDays: z.int().min(0),
  storageCapped: z.boolean(),
  rush: BasisPointsSchema,
  sublet: BasisPointsSchema,
  buffer: BasisPointsSchema,
  estimateDays: z.int().min(1),
  depositNewRetail: CentsSchema,
  depositSpecial: BasisPointsSchema,
  creditWarn: BasisPointsSchema,
  coreDays: z.int().min(0),
  coreGood: BasisPointsSchema,
  coreRepairable: BasisPointsSchema,
  coreScrap: BasisPointsSchema,
  shimStackInch: NanometresSchema.nullable(),
  shimStackMm: NanometresSchema.nullable(),
  benchRate: PriceE4Schema.nullable(),
  weldRate: PriceE4Schema.nullable(),
  pinDigits: z.int().min(4).max(8),
  taxRounding: z.enum(['per_rate', 'per_line']),
  ageFrom: z.enum(['due', 'issued']),
  samePersonSigns: z.boolean(),
  guard: z.boolean(),
  ceilingTaxIn: z.boolean(),
  promiseMinute: Minute,
  hourClock: z.enum(['24', '12']),
  idleMinutes: z.int().min(1).max(600),
  backupFolder: optionalWords(400, 'the folder'),
} as const;

const SettingsShape = z.strictObject(Settings);
export type ShopSettings = z.output<typeof SettingsShape>;

const OpenHours = z.strictObject({
  weekday: z.int().min(1).max(7),
  part: z.enum(['counter', 'bench']),
  from: Minute,
  until: Minute,
});
const SERIES = ['ticket', 'tag', 'invoice', 'credit_note', 'receipt'] as const;
export const TEXT_KINDS = [
  'warranty',
  'claim_terms',
  'storage',
  'disclaimer',
  'letter_ready',
  'letter_reminder',
  'letter_final',
] as const;

const ActivityRow = z.strictObject({
  id: z.int(),
  at: z.string(),
  by: z.string(),
  from: z.string(),
  command: z.string(),
  words: z.string(),
  ticket: z.int().nullable(),
  subject: z.string(),
  before: z.unknown(),
  after: z.unknown(),
});
const BackupRow = z.strictObject({ file: z.string(), at: z.string(), bytes: z.int(), why: z.string() });

export const shopContract = {
  'shop/get-face': query({ may: 'nobody', input: z.strictObject({}), output: ShopFace }),
  'shop/get-settings': query({
    may: 'shop:see',
    input: z.strictObject({}),
    output: z.strictObject({
      version: z.int(),
      settings: SettingsShape,
      openHours: z.array(OpenHours),
      holidays: z.array(z.strictObject({ id: idOf<'holiday'>(), day: DaySchema, words: z.string() })),
      numbers: z.array(z.strictObject({ series: z.enum(SERIES), next: z.int(), used: z.boolean() })),
      texts: z.array(z.strictObject({ kind: z.enum(TEXT_KINDS), body: z.string(), from: DaySchema })),
    }),
  }),
  /** Only the settings that change. */
  'shop/change-settings': command({
    may: 'shop:edit',
    pin: 'again',
    input: z.strictObject({ seenVersion: SeenVersion, changes: SettingsShape.partial() }),
    output: z.strictObject({ version: z.int() }),
  }),
  'shop/set-next-number': command({
    may: 'shop:edit',
    input: z.strictObject({ series: z.enum(SERIES), next: z.int().positive('Write the next number.') }),
    output: z.strictObject({}),
  }),
  'shop/add-text-version': command({
    may: 'shop:edit',
    input: z.strictObject({ kind: z.enum(TEXT_KINDS), body: words(8000, 'the text'), from: DaySchema }),
    output: z.strictObject({ id: idOf<'text_version'>() }),
  }),
  /** The whole week at once; what was set before ends. */
  'promises/set-open-hours': command({
    may: 'shop:edit',
    input: z.strictObject({ hours: z.array(OpenHours).max(60) }),
    output: z.strictObject({}),
  }),
  'promises/add-holiday': command({
    may: 'shop:edit',
    input: z.strictObject({ day: DaySchema, words: words(80, 'why the shop is closed') }),
    output: z.strictObject({ id: idOf<'holiday'>() }),
  }),
  'promises/end-holiday': command({
    may: 'shop:edit',
    input: z.strictObject({ holiday: idOf<'holiday'>() }),
    output: z.strictObject({}),
  }),
  'activity/list-activity': query({
    may: 'tickets:see',
    input: z.strictObject({
      ticket: idOf<'ticket'>().optional(),
      subject: z.tuple([z.string(), z.int()]).optional(),
      before: z.int().optional(),
      limit: z.int().min(1).max(200).default(50),
    }),
    output: z.strictObject({ rows: z.array(ActivityRow), more: z.boolean() }),
  }),
  /** True when every row still carries the hash of the one before. */
  'activity/check-chain': query({
    may: 'shop:edit',
    input: z.strictObject({}),
    output: z.strictObject({ whole: z.boolean(), brokenAt: z.int().nullable() }),
  }),
  'backup/make-backup': command({
    may: 'shop:edit',
    input: z.strictObject({}),
    output: BackupRow.omit({ why: true, at: true }),
  }),
  /** A command only so that the slow look at the folder happens outside every transaction; it changes nothing. */
  'backup/list-backups': command({
    may: 'shop:edit',
    input: z.strictObject({}),
    output: z.strictObject({ backups: z.array(BackupRow) }),
  }),
  /** The owner, at the machine itself. The host swaps the file after this answer; what it replaces is kept aside. */
  'backup/restore-backup': command({
    may: 'shop:edit',
    pin: 'again',
    input: z.strictObject({ file: z.string().min(1, 'Choose a backup.').max(200) }),
    output: z.strictObject({ file: z.string() }),
  }),
  'backup/get-last-backup': query({
    may: 'shop:see',
    input: z.strictObject({}),
    output: z.strictObject({ last: z.strictObject({ at: z.string(), file: z.string(), bytes: z.int() }).nullable() }),
  }),
} as const;
