/**
 * The rooms of core and the order of its features: the one list that the boundaries check and the layout check read.
 *
 * A feature reaches compute and store of features in earlier rows only; features of one row never reach each other's
 * store. Contracts may name each other freely.
 */

/** Features in order, earliest row first. */
export const rows = [
  { name: 'reference', features: ['shop', 'staff', 'catalogue'] },
  { name: 'prices', features: ['rates'] },
  { name: 'people', features: ['customers'] },
  { name: 'accounts', features: ['terms'] },
  { name: 'job', features: ['tickets', 'castings', 'intake', 'photos'] },
  { name: 'work', features: ['lines', 'readings', 'racks', 'money'] },
  { name: 'rule', features: ['state'] },
  // The floor is guarded by the state of every ticket, and asking and signing off open and read its holds.
  { name: 'bench', features: ['floor'] },
  { name: 'acts', features: ['opening', 'check-in', 'pricing', 'parts', 'asking', 'billing', 'sign-off', 'release'] },
  { name: 'views', features: ['search', 'ticket-page', 'promises', 'home', 'sheets'] },
];

/** Folders of core that belong to no feature and choose their own file names. */
export const ground = ['kernel', 'host', 'db', 'paper', 'drawing'];

/** Files that lie directly in core. */
export const coreFiles = ['app-contract.ts'];

/** Every feature, in order. */
export const features = rows.flatMap((row) => row.features);
