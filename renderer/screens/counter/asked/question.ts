/** A question to the customer as its page gets it. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type Question = OutputOf<App['approvals/get-question']>;
export type Way = Question['options'][number];
