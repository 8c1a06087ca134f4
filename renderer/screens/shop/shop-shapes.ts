/** Answers that several pages of the Shop area show. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type Account = OutputOf<App['customers/get-customer']>;
export type Rates = OutputOf<App['rates/list-rates']>;
