/** What the find box answers, as the parts of its pane get it. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type Found = OutputOf<App['search/find-anything']>;
