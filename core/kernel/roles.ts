/** Roles and what each may do. Source: the shop's own division of work, common practice, no source. */

export const ROLES = ['counter', 'machinist', 'lead', 'books', 'owner'] as const;
export type Role = (typeof ROLES)[number];

/** Every capability with the roles that carry it. A person's capabilities are the sum over their roles. */
const GRANTS = {
  'customers:see': ['counter', 'lead', 'books', 'owner'],
  'customers:edit': ['counter', 'lead', 'owner'],
  'tickets:see': ['counter', 'lead', 'books', 'owner'],
  'tickets:edit': ['counter', 'lead', 'owner'],
  'castings:see': ['counter', 'machinist', 'lead', 'books', 'owner'],
  'castings:edit': ['counter', 'lead', 'owner'],
  'castings:sign': ['machinist', 'lead', 'owner'],
  'floor:see': ['counter', 'machinist', 'lead', 'owner'],
  'floor:work': ['counter', 'machinist', 'lead', 'owner'],
  'promises:see': ['counter', 'machinist', 'lead', 'owner'],
  'catalogue:see': ['counter', 'machinist', 'lead', 'books', 'owner'],
  'catalogue:edit': ['lead', 'owner'],
  'pricing:see': ['counter', 'lead', 'books', 'owner'],
  'pricing:override': ['counter', 'lead', 'owner'],
  'approvals:record': ['counter', 'lead', 'owner'],
  'leads:decide': ['lead', 'owner'],
  'parts:edit': ['counter', 'lead', 'owner'],
  'release:do': ['counter', 'lead', 'owner'],
  'money:see': ['counter', 'lead', 'books', 'owner'],
  'money:issue': ['counter', 'lead', 'books', 'owner'],
  'money:take': ['counter', 'lead', 'books', 'owner'],
  'money:credit': ['books', 'owner'],
  'accounts:edit': ['books', 'owner'],
  'books:export': ['books', 'owner'],
  'rates:edit': ['owner'],
  'shop:see': ['counter', 'machinist', 'lead', 'books', 'owner'],
  'shop:edit': ['owner'],
  'staff:edit': ['owner'],
  'devices:edit': ['owner'],
  'drafts:keep': ['counter', 'machinist', 'lead', 'books', 'owner'],
  'find:see': ['counter', 'machinist', 'lead', 'books', 'owner'],
} as const satisfies Record<string, readonly Role[]>;

export type Capability = keyof typeof GRANTS;

export const CAPABILITIES = Object.keys(GRANTS) as Capability[];

/** Everything a person with these roles may do. */
export function capabilitiesOf(roles: readonly Role[]): ReadonlySet<Capability> {
  return new Set(CAPABILITIES.filter((name) => GRANTS[name].some((role: Role) => roles.includes(role))));
}
