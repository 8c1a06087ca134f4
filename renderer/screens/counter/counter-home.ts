/** What the counter's home page answers, as its parts get it. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type Home = OutputOf<App['home/get-counter']>;
