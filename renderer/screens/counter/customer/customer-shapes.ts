/** A customer as its page gets it. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type Customer = OutputOf<App['customers/get-customer']>;
export type CustomerPerson = Customer['persons'][number];
