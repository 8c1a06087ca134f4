/** What the bench knows of one casting, as its queries give it. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type BenchCasting = OutputOf<App['floor/get-bench']>;
export type BenchOperation = BenchCasting['operations'][number];
export type QueueAnswer = OutputOf<App['floor/list-queue']>;
export type QueueLine = QueueAnswer['next'][number];
export type Reason = BenchOperation['stops'][number];

/** What a half-typed figure would become. */
export type Preview = OutputOf<App['readings/get-preview']>;
/** Stacks of shims that could go under one spring, best first. */
export type ShimChoices = OutputOf<App['readings/get-shim-choice']>;

/** The operation readings of a table belong to: the one being worked on, else the next, else the last that needs it. */
export function operationOf(bench: BenchCasting, table: string): BenchOperation | null {
  const holds = bench.operations.filter((row) => row.before.table === table || row.after.table === table);
  return (
    holds.find((row) => row.running.length > 0) ??
    holds.find((row) => row.next) ??
    holds.find((row) => row.mark === 'open' || row.mark === 'uncovered') ??
    holds.at(-1) ??
    null
  );
}

/** `after` while an operation is being worked on that reads this table when it is done and wants nothing more before it. */
export function stageNow(operation: BenchOperation | null, table: string): 'after' | null {
  if (!operation || operation.running.length === 0 || operation.after.table !== table) return null;
  const { before } = operation;
  return before.table === table && before.done < before.of ? null : 'after';
}
