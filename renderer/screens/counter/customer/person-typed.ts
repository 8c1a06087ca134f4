/** A person of a customer as typed, and how it becomes the requests. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import type { Cents } from '#core/kernel/units.ts';
import type { CustomerPerson } from './customer-shapes.ts';

export type PersonTyped = Readonly<{
  name: string;
  role: string;
  phone: string;
  mayApprove: boolean;
  limit: string;
  mayCollect: boolean;
  prefers: CustomerPerson['prefers'];
}>;

type Phones = readonly Readonly<{ contactId: number; kind: string; value: string }>[];

const phonesOf = (person: CustomerPerson | undefined): Phones =>
  person?.contacts.filter((contact) => contact.kind === 'phone') ?? [];

/** What the form starts with; a new person may collect and not say yes. */
export const startPerson = (person: CustomerPerson | undefined, limit: string): PersonTyped => ({
  name: person?.name ?? '',
  role: person?.roleWords ?? '',
  phone: phonesOf(person)[0]?.value ?? '',
  mayApprove: person?.mayApprove ?? false,
  limit,
  mayCollect: person?.mayCollect ?? true,
  prefers: person?.prefers ?? 'call',
});

/** A telephone that is new takes the place of the first one. */
function contactChanges(typed: PersonTyped, person: CustomerPerson | undefined) {
  const phones = phonesOf(person);
  const value = typed.phone.trim();
  const fresh = value !== '' && phones.every((contact) => contact.value !== value);
  return {
    added: fresh ? [{ kind: 'phone' as const, value }] : [],
    dropped: fresh ? phones.slice(0, 1).map((contact) => contact.contactId) : [],
  };
}

/** A new person. `limit` in cents, null for any amount. */
export const addPersonInput = (
  typed: PersonTyped,
  limit: Cents | null,
): InputOf<App['customers/add-person']>['person'] => ({
  name: typed.name,
  roleWords: typed.role.trim() || null,
  mayApprove: typed.mayApprove,
  approveLimit: typed.mayApprove ? limit : null,
  mayCollect: typed.mayCollect,
  prefers: typed.prefers,
  contacts: contactChanges(typed, undefined).added,
});

/** A changed person, each field with what was seen. */
export function changePersonInput(
  typed: PersonTyped,
  person: CustomerPerson,
  limit: Cents | null,
): InputOf<App['customers/change-person']> {
  const { added, dropped } = contactChanges(typed, person);
  return {
    personId: person.personId,
    seenVersion: person.version,
    changes: {
      name: { seen: person.name, to: typed.name },
      roleWords: { seen: person.roleWords, to: typed.role.trim() || null },
      mayApprove: { seen: person.mayApprove, to: typed.mayApprove },
      approveLimit: { seen: person.approveLimit, to: typed.mayApprove ? limit : null },
      mayCollect: { seen: person.mayCollect, to: typed.mayCollect },
      prefers: { seen: person.prefers, to: typed.prefers },
    },
    addContacts: added,
    dropContacts: dropped,
  };
}
