/** People of the shop, signing in, devices, and what was typed but not yet sent. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { ROLES } from '../kernel/roles.ts';
import { idOf, MomentSchema, optionalWords, SeenVersion, words } from '../kernel/schemas.ts';

const Pin = z.string().regex(/^\d{4,8}$/, 'A PIN is 4 to 8 digits.');
const StaffIdSchema = idOf<'staff'>();
const RolesSchema = z.array(z.enum(ROLES)).min(1, 'Give at least one role.');
const Initials = words(4, 'the initials');

const Person = z.strictObject({
  id: StaffIdSchema,
  version: z.int(),
  name: z.string(),
  initials: z.string(),
  jobWords: z.string().nullable(),
  roles: z.array(z.enum(ROLES)),
  hasPin: z.boolean(),
  retiredOn: z.string().nullable(),
});
const SignInName = z.strictObject({
  staff: StaffIdSchema,
  name: z.string(),
  initials: z.string(),
  signedInHere: z.boolean(),
});
const Me = z.strictObject({
  staff: StaffIdSchema,
  name: z.string(),
  initials: z.string(),
  roles: z.array(z.enum(ROLES)),
  /** Capability names, so that a screen offers only what will be allowed. */
  may: z.array(z.string()),
});
const DraftKind = z.enum(['check_in', 'added_work', 'readings', 'first_run']);

export const staffContract = {
  /** Names and initials of active people, for the sign-in tiles; those who may go on with one touch here today first. */
  'staff/list-sign-in-names': query({
    may: 'nobody',
    input: z.strictObject({}),
    output: z.strictObject({ device: z.string().nullable(), people: z.array(SignInName) }),
  }),
  /** A wrong PIN is an answer, not an error, because the try itself is kept. */
  'staff/sign-in': command({
    may: 'nobody',
    secret: ['pin'],
    input: z.strictObject({ staff: StaffIdSchema, pin: Pin }),
    output: z.discriminatedUnion('signedIn', [
      z.strictObject({ signedIn: z.literal(true), me: Me }),
      z.strictObject({ signedIn: z.literal(false), message: z.string() }),
    ]),
  }),
  'staff/sign-out': command({ may: 'drafts:keep', input: z.strictObject({}), output: z.strictObject({}) }),
  'staff/get-me': query({ may: 'drafts:keep', input: z.strictObject({}), output: Me }),
  'staff/list-staff': query({
    may: 'shop:see',
    input: z.strictObject({ retiredToo: z.boolean().default(false) }),
    output: z.strictObject({ people: z.array(Person) }),
  }),
  'staff/add-person': command({
    may: 'staff:edit',
    secret: ['pin'],
    input: z.strictObject({
      name: words(80, 'the name'),
      initials: Initials,
      jobWords: optionalWords(120, 'the job'),
      roles: RolesSchema,
      pin: Pin.nullish(),
    }),
    output: z.strictObject({ staff: StaffIdSchema }),
  }),
  'staff/change-roles': command({
    may: 'staff:edit',
    pin: 'again',
    input: z.strictObject({
      staff: StaffIdSchema,
      seenVersion: SeenVersion,
      roles: RolesSchema,
      jobWords: optionalWords(120, 'the job').optional(),
    }),
    output: z.strictObject({ version: z.int() }),
  }),
  'staff/set-pin': command({
    may: 'drafts:keep',
    pin: 'again',
    secret: ['pin'],
    /** One's own, or anybody's for an owner. */
    input: z.strictObject({ staff: StaffIdSchema, pin: Pin }),
    output: z.strictObject({}),
  }),
  'staff/retire-person': command({
    may: 'staff:edit',
    pin: 'again',
    input: z.strictObject({ staff: StaffIdSchema, seenVersion: SeenVersion }),
    output: z.strictObject({}),
  }),
  /** Sent by the host itself when a screen shows the right pairing code; a token is kept only as its hash. */
  'devices/pair-device': command({
    may: 'devices:edit',
    secret: ['tokenHash'],
    input: z.strictObject({
      name: words(60, 'a name for this screen'),
      kind: z.enum(['desktop', 'tablet', 'pc']),
      workCentre: idOf<'work_centre'>().nullish(),
      tokenHash: z.string().length(64),
    }),
    output: z.strictObject({ device: idOf<'device'>() }),
  }),
  'devices/revoke-device': command({
    may: 'devices:edit',
    pin: 'again',
    input: z.strictObject({ device: idOf<'device'>(), seenVersion: SeenVersion }),
    output: z.strictObject({}),
  }),
  'devices/set-device': command({
    may: 'devices:edit',
    input: z.strictObject({
      device: idOf<'device'>(),
      seenVersion: SeenVersion,
      name: words(60, 'a name for this screen'),
      workCentre: idOf<'work_centre'>().nullable(),
    }),
    output: z.strictObject({ version: z.int() }),
  }),
  'devices/list-devices': query({
    may: 'shop:see',
    input: z.strictObject({}),
    output: z.strictObject({
      devices: z.array(
        z.strictObject({
          id: idOf<'device'>(),
          version: z.int(),
          name: z.string(),
          kind: z.string(),
          workCentre: z.string().nullable(),
          pairedAt: z.string(),
          lastSignIn: z.string().nullable(),
          revoked: z.boolean(),
          thisOne: z.boolean(),
        }),
      ),
    }),
  }),
  /** Keep what is typed; the newest body of one draft replaces the older. */
  'devices/keep-draft': command({
    may: 'drafts:keep',
    secret: ['body'],
    input: z.strictObject({
      draft: idOf<'draft'>().nullish(),
      kind: DraftKind,
      title: optionalWords(200, 'the title'),
      body: z.string().max(2_000_000),
    }),
    output: z.strictObject({ draft: idOf<'draft'>(), keptAt: MomentSchema }),
  }),
  'devices/drop-draft': command({
    may: 'drafts:keep',
    input: z.strictObject({ draft: idOf<'draft'>() }),
    output: z.strictObject({}),
  }),
  'devices/list-drafts': query({
    may: 'drafts:keep',
    input: z.strictObject({ kind: DraftKind.optional() }),
    output: z.strictObject({
      drafts: z.array(
        z.strictObject({
          draft: idOf<'draft'>(),
          kind: DraftKind,
          title: z.string().nullable(),
          body: z.string(),
          keptAt: z.string(),
          by: z.string(),
        }),
      ),
    }),
  }),
} as const;
