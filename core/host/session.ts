/** Who sends a request, from where, and what they may do. Made by the host adapters, never by the sender. */
import type { DeviceId, StaffId } from '../kernel/ids.ts';
import { CAPABILITIES, type Capability, capabilitiesOf, type Role } from '../kernel/roles.ts';

export type Session = Readonly<{
  device: DeviceId | null;
  /** Null: a paired device on which nobody is signed in, or the very first run. */
  staff: StaffId | null;
  name: string;
  initials: string;
  roles: readonly Role[];
  may: ReadonlySet<Capability>;
  /** Where the request came from: `desktop`, `browser`, `command line`, `practice shop`. Stands in activity. */
  from: string;
  /** True at the machine that keeps the workspace (restore, first pairing). */
  atTheMachine: boolean;
}>;

/** A session of a signed-in person. */
export const sessionOf = (person: {
  staff: StaffId;
  name: string;
  initials: string;
  roles: readonly Role[];
  device: DeviceId | null;
  from: string;
  atTheMachine?: boolean;
}): Session => ({ ...person, may: capabilitiesOf(person.roles), atTheMachine: person.atTheMachine ?? false });

/** Nobody signed in. */
export const nobody = (device: DeviceId | null, from: string, atTheMachine = false): Session => ({
  device,
  staff: null,
  name: '',
  initials: '',
  roles: [],
  may: new Set(),
  from,
  atTheMachine,
});

/** The loader of practice data and the tests' set-up: may do everything, named as nobody. */
export const everything = (from: string): Session => ({
  ...nobody(null, from, true),
  may: new Set(CAPABILITIES),
});
