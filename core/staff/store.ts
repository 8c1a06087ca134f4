/** Reads and writes of people, devices, sign-ins and drafts. */

import type { ReadDb, WriteDb } from '../db/query.ts';
import type { Moment } from '../kernel/days.ts';
import { flag } from '../kernel/flag.ts';
import type { DeviceId, StaffId } from '../kernel/ids.ts';
import type { Role } from '../kernel/roles.ts';

/** Digits of a PIN in this shop; 6 before the first run. */
export const pinDigits = (db: ReadDb): number =>
  db.one(db.q.selectFrom('shop_setting').select('pin_digits'))?.pin_digits ?? 6;
export const isPractice = (db: ReadDb): boolean =>
  db.one(db.q.selectFrom('shop_setting').select('practice'))?.practice === 1;

const people = (db: ReadDb) =>
  db.q
    .selectFrom('staff')
    .select([
      'id',
      'version',
      'name',
      'initials',
      'job_words as jobWords',
      'pin_hash as pinHash',
      'retired_on as retiredOn',
    ]);

export type Person = NonNullable<ReturnType<typeof findPerson>>;

/** A person with the roles held now, or undefined. */
export function findPerson(db: ReadDb, staff: StaffId) {
  const row = db.one(people(db).where('id', '=', staff));
  return row && { ...row, roles: rolesOf(db, staff) };
}

/** Everybody, by name; retired people only when asked. */
export function listPeople(db: ReadDb, retiredToo: boolean) {
  const query = people(db).orderBy('name');
  return db
    .all(retiredToo ? query : query.where('retired_on', 'is', null))
    .map((row) => ({ ...row, roles: rolesOf(db, row.id) }));
}

const rolesOf = (db: ReadDb, staff: StaffId): Role[] =>
  db
    .all(
      db.q
        .selectFrom('staff_role')
        .select('role')
        .where('staff_id', '=', staff)
        .where('ended_at', 'is', null)
        .orderBy('id'),
    )
    .map((r) => r.role);

export type NewPerson = Readonly<{
  name: string;
  initials: string;
  jobWords: string | null;
  roles: readonly Role[];
  pinHash: string | null;
}>;

/** Add a person with roles. */
export function insertPerson(db: WriteDb, person: NewPerson): StaffId {
  const staff = db.add('staff', {
    name: person.name,
    initials: person.initials,
    job_words: person.jobWords,
    pin_hash: person.pinHash,
  });
  for (const role of new Set(person.roles)) db.add('staff_role', { staff_id: staff, role });
  return staff;
}

/** End the roles that are gone and give those that are new. */
export function replaceRoles(db: WriteDb, staff: StaffId, roles: readonly Role[], now: Moment): void {
  const held = rolesOf(db, staff);
  for (const role of held.filter((r) => !roles.includes(r))) {
    db.run(
      db.q
        .updateTable('staff_role')
        .set({ ended_at: now })
        .where('staff_id', '=', staff)
        .where('role', '=', role)
        .where('ended_at', 'is', null),
    );
  }
  for (const role of new Set(roles.filter((r) => !held.includes(r)))) db.add('staff_role', { staff_id: staff, role });
}

/** Active people who hold a role. */
export const countActive = (db: ReadDb, role: Role): number =>
  db.all(
    db.q
      .selectFrom('staff_role as r')
      .innerJoin('staff as s', 's.id', 'r.staff_id')
      .select('s.id')
      .where('r.role', '=', role)
      .where('r.ended_at', 'is', null)
      .where('s.retired_on', 'is', null),
  ).length;

/** Open sign-ins of a device, newest first. */
export const listSignIns = (db: ReadDb, device: DeviceId) =>
  db.all(
    db.q
      .selectFrom('sign_in')
      .select(['id', 'staff_id as staff', 'at'])
      .where('device_id', '=', device)
      .where('ended_at', 'is', null)
      .orderBy('id', 'desc')
      .limit(100),
  );

/** Note that a person signed in on a device; an older open row of the same person ends. */
export function openSignIn(db: WriteDb, device: DeviceId, staff: StaffId, at: Moment): void {
  closeSignIns(db, device, staff, at);
  db.add('sign_in', { device_id: device, staff_id: staff, at });
}

export function closeSignIns(db: WriteDb, device: DeviceId, staff: StaffId, at: Moment): void {
  db.run(
    db.q
      .updateTable('sign_in')
      .set({ ended_at: at })
      .where('device_id', '=', device)
      .where('staff_id', '=', staff)
      .where('ended_at', 'is', null),
  );
}

/** Tries of a person on a device since a moment, newest first. */
export const listTries = (db: ReadDb, device: DeviceId, staff: StaffId, since: Moment) =>
  db.all(
    db.q
      .selectFrom('pin_try')
      .select(['at', 'matched'])
      .where('device_id', '=', device)
      .where('staff_id', '=', staff)
      .where('at', '>=', since)
      .orderBy('id', 'desc')
      .limit(50),
  );

export const insertTry = (db: WriteDb, device: DeviceId, staff: StaffId, at: Moment, matched: boolean): void =>
  void db.add('pin_try', { device_id: device, staff_id: staff, at, matched: flag(matched) });

/** The device that carries this token hash, unless it was revoked. */
export const findDevice = (db: ReadDb, tokenHash: string) =>
  db.one(
    db.q
      .selectFrom('device')
      .select(['id', 'name', 'kind', 'work_centre_id as workCentre'])
      .where('token_hash', '=', tokenHash)
      .where('revoked_at', 'is', null),
  );

export const getDeviceName = (db: ReadDb, device: DeviceId): string | null =>
  db.one(db.q.selectFrom('device').select('name').where('id', '=', device))?.name ?? null;

/** Every device with its last sign-in, newest pairing first. */
export const listDevices = (db: ReadDb) =>
  db.all(
    db.q
      .selectFrom('device as d')
      .leftJoin('work_centre as w', 'w.id', 'd.work_centre_id')
      .select([
        'd.id',
        'd.version',
        'd.name',
        'd.kind',
        'w.name as workCentre',
        'd.created_at as pairedAt',
        'd.revoked_at as revokedAt',
      ])
      .select((eb) =>
        eb
          .selectFrom('sign_in as s')
          .select('s.at')
          .whereRef('s.device_id', '=', 'd.id')
          .orderBy('s.id', 'desc')
          .limit(1)
          .as('lastSignIn'),
      )
      .orderBy('d.id', 'desc'),
  );

/** Drafts of one person that were not dropped, newest first. */
export const listDrafts = (db: ReadDb, staff: StaffId) =>
  db.all(
    db.q
      .selectFrom('draft as d')
      .innerJoin('staff as s', 's.id', 'd.staff_id')
      .select(['d.id as draft', 'd.kind', 'd.title', 'd.body', 'd.kept_at as keptAt', 's.name as by'])
      .where('d.staff_id', '=', staff)
      .where('d.dropped_at', 'is', null)
      .orderBy('d.kept_at', 'desc')
      .limit(100),
  );
