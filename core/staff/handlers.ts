/** People, sign-in, devices and drafts. */
import { type Ctx, implement, type PrepareCtx, personOf, type QueryCtx } from '../host/implement.ts';
import { AppError, badField, notFound, ruleBroken } from '../kernel/errors.ts';
import type { StaffId } from '../kernel/ids.ts';
import { capabilitiesOf } from '../kernel/roles.ts';
import { pinFault } from './compute.ts';
import { staffContract } from './contract.ts';
import { isWaiting, waitSentence } from './store/pin-tries.ts';
import * as store from './store.ts';

const getPerson = (ctx: Pick<QueryCtx, 'db'>, staff: StaffId) => {
  const person = store.findPerson(ctx.db, staff);
  if (!person) throw notFound('staff/not-here', 'This person');
  return person;
};

const meOf = (person: store.Person) => ({
  staff: person.id,
  name: person.name,
  initials: person.initials,
  roles: person.roles,
  may: [...capabilitiesOf(person.roles)],
});

const deviceOf = (ctx: Pick<QueryCtx, 'session'>) => {
  const { device } = ctx.session;
  if (device === null)
    throw new AppError('not-allowed', 'staff/not-paired', 'This screen is not paired with the shop. Pair it first.');
  return device;
};

/** Hash a new PIN after judging it. */
async function hashNewPin(pin: string, ctx: PrepareCtx): Promise<string> {
  const { digits, practice } = ctx.read(({ db }) => ({ digits: store.pinDigits(db), practice: store.isPractice(db) }));
  const fault = pinFault(pin, digits, practice);
  if (fault) throw badField('staff/pin-weak', 'pin', fault);
  return ctx.services.pins.hash(pin);
}

const nobodyElseOwns = (ctx: Ctx, person: store.Person, roles: readonly string[]): boolean =>
  person.roles.includes('owner') &&
  person.retiredOn === null &&
  !roles.includes('owner') &&
  store.countActive(ctx.db, 'owner') === 1;

const STAY_OWNER = 'Somebody must stay owner. Make another person owner first.';

export const staff = implement(staffContract, {
  'staff/list-sign-in-names': {
    run(_, { db, session, local, today }) {
      const here =
        session.device === null ? [] : store.listSignIns(db, session.device).filter((s) => local(s.at).day === today);
      const people = store
        .listPeople(db, false)
        .filter((p) => p.pinHash !== null)
        .map((p) => ({
          staff: p.id,
          name: p.name,
          initials: p.initials,
          signedInHere: here.some((s) => s.staff === p.id),
        }));
      return {
        device: session.device === null ? null : store.getDeviceName(db, session.device),
        people: people.sort((a, b) => Number(b.signedInHere) - Number(a.signedInHere)),
      };
    },
  },
  'staff/sign-in': {
    async prepare(input, ctx) {
      const found = ctx.read(({ db }) => ({
        person: store.findPerson(db, input.staff),
        waiting: isWaiting(db, deviceOf(ctx), input.staff, ctx.now),
      }));
      const hash = found.person?.retiredOn === null ? found.person.pinHash : null;
      if (found.waiting || hash === null) return false;
      return ctx.services.pins.matches(input.pin, hash);
    },
    run(input, ctx, matched: boolean) {
      const device = deviceOf(ctx);
      const person = getPerson(ctx, input.staff);
      const waiting = isWaiting(ctx.db, device, input.staff, ctx.now);
      if (!waiting) store.insertTry(ctx.db, device, input.staff, ctx.now, matched);
      if (!matched) {
        const message = waiting
          ? waitSentence(person.name)
          : `That is not ${person.name}'s PIN. Try again, or tap another name.`;
        return {
          output: { signedIn: false as const, message },
          activity: [{ subject: ['staff', person.id], words: `Wrong PIN for ${person.name}` }],
        };
      }
      store.openSignIn(ctx.db, device, person.id, ctx.now);
      return {
        output: { signedIn: true as const, me: meOf(person) },
        activity: [{ subject: ['staff', person.id], words: `${person.name} signed in` }],
      };
    },
  },
  'staff/sign-out': {
    run(_, ctx) {
      const by = personOf(ctx);
      store.closeSignIns(ctx.db, deviceOf(ctx), by, ctx.now);
      return { output: {}, activity: [{ subject: ['staff', by], words: `${ctx.session.name} signed out` }] };
    },
  },
  'staff/get-me': { run: (_, ctx) => meOf(getPerson(ctx, personOf(ctx))) },
  'staff/list-staff': {
    run: ({ retiredToo }, { db }) => ({
      people: store
        .listPeople(db, retiredToo)
        .map(({ pinHash, ...person }) => ({ ...person, hasPin: pinHash !== null })),
    }),
  },
  'staff/add-person': {
    prepare: async (input, ctx) => (input.pin ? hashNewPin(input.pin, ctx) : null),
    run(input, ctx, pinHash: string | null) {
      if (store.listPeople(ctx.db, false).some((p) => p.initials === input.initials)) {
        throw badField(
          'staff/initials-used',
          'initials',
          `${input.initials} are somebody else's initials here. Use others.`,
        );
      }
      const id = store.insertPerson(ctx.db, {
        name: input.name,
        initials: input.initials,
        jobWords: input.jobWords,
        roles: input.roles,
        pinHash,
      });
      return {
        output: { staff: id },
        activity: [{ subject: ['staff', id], words: `Added ${input.name} as ${input.roles.join(', ')}` }],
      };
    },
  },
  'staff/change-roles': {
    run(input, ctx) {
      const person = getPerson(ctx, input.staff);
      if (nobodyElseOwns(ctx, person, input.roles)) throw ruleBroken('staff/last-owner', STAY_OWNER);
      store.replaceRoles(ctx.db, person.id, input.roles, ctx.now);
      const version = ctx.db.step(
        'staff',
        person.id,
        input.seenVersion,
        input.jobWords === undefined ? {} : { job_words: input.jobWords },
      );
      return {
        output: { version },
        activity: [
          {
            subject: ['staff', person.id],
            words: `Roles of ${person.name}: ${input.roles.join(', ')}`,
            before: person.roles,
            after: input.roles,
          },
        ],
      };
    },
  },
  'staff/set-pin': {
    async prepare(input, ctx) {
      if (ctx.session.staff !== input.staff && !ctx.session.may.has('staff:edit')) {
        throw new AppError('not-allowed', 'staff/not-your-pin', "Only an owner sets somebody else's PIN.");
      }
      return hashNewPin(input.pin, ctx);
    },
    run(input, ctx, pinHash: string) {
      const person = getPerson(ctx, input.staff);
      ctx.db.set('staff', person.id, { pin_hash: pinHash });
      return { output: {}, activity: [{ subject: ['staff', person.id], words: `New PIN for ${person.name}` }] };
    },
  },
  'staff/retire-person': {
    run(input, ctx) {
      const person = getPerson(ctx, input.staff);
      if (nobodyElseOwns(ctx, person, [])) throw ruleBroken('staff/last-owner', STAY_OWNER);
      ctx.db.step('staff', person.id, input.seenVersion, { retired_on: ctx.today, pin_hash: null });
      return { output: {}, activity: [{ subject: ['staff', person.id], words: `${person.name} left the shop` }] };
    },
  },
  'devices/pair-device': {
    run(input, { db }) {
      const device = db.add('device', {
        name: input.name,
        kind: input.kind,
        work_centre_id: input.workCentre ?? null,
        token_hash: input.tokenHash,
      });
      return {
        output: { device },
        activity: [{ subject: ['device', device], words: `Paired the screen ${input.name}` }],
      };
    },
  },
  'devices/revoke-device': {
    run(input, { db, now }) {
      db.step('device', input.device, input.seenVersion, { revoked_at: now });
      return {
        output: {},
        activity: [
          {
            subject: ['device', input.device],
            words: `Shut out the screen ${store.getDeviceName(db, input.device) ?? ''}`,
          },
        ],
      };
    },
  },
  'devices/set-device': {
    run(input, { db }) {
      const version = db.step('device', input.device, input.seenVersion, {
        name: input.name,
        work_centre_id: input.workCentre,
      });
      return {
        output: { version },
        activity: [{ subject: ['device', input.device], words: `Set the screen ${input.name}` }],
      };
    },
  },
  'devices/list-devices': {
    run: (_, { db, session }) => ({
      devices: store.listDevices(db).map(({ revokedAt, ...device }) => ({
        ...device,
        revoked: revokedAt !== null,
        thisOne: device.id === session.device,
      })),
    }),
  },
  'devices/keep-draft': {
    run(input, ctx) {
      const by = personOf(ctx);
      const row = { title: input.title, body: input.body, kept_at: ctx.now };
      const own = input.draft ? store.listDrafts(ctx.db, by).some((d) => d.draft === input.draft) : false;
      const draft =
        own && input.draft
          ? input.draft
          : ctx.db.add('draft', { ...row, kind: input.kind, staff_id: by, device_id: ctx.session.device });
      if (own) ctx.db.set('draft', draft, row);
      return {
        output: { draft, keptAt: ctx.now },
        activity: [{ subject: ['draft', draft], words: `Set aside: ${input.title ?? input.kind.replace('_', ' ')}` }],
      };
    },
  },
  'devices/drop-draft': {
    run(input, ctx) {
      const mine = store.listDrafts(ctx.db, personOf(ctx)).some((d) => d.draft === input.draft);
      if (!mine) throw notFound('staff/draft-gone', 'What was set aside');
      ctx.db.set('draft', input.draft, { dropped_at: ctx.now });
      return { output: {}, activity: [{ subject: ['draft', input.draft], words: 'Dropped what was set aside' }] };
    },
  },
  'devices/list-drafts': {
    run: ({ kind }, ctx) => ({
      drafts: store.listDrafts(ctx.db, personOf(ctx)).filter((d) => kind === undefined || d.kind === kind),
    }),
  },
});
