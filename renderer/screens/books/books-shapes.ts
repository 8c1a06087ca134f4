/** What the pages of the Books get, and pure ways to lay it out. */
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';

export type Preview = OutputOf<App['invoices/get-preview']>;
export type Invoice = OutputOf<App['invoices/get-invoice']>;
export type InvoiceLine = Invoice['lines'][number];
export type Bill = Invoice['bill'];
export type Payment = OutputOf<App['payments/list-payments']>['payments'][number];

export const accountAddress = (customer: number): string => `#/books/account/${customer}`;

/** Lines of one casting, or of the ticket as a whole (`tag` null), in the order they came. */
export type LineGroup = Readonly<{ tag: number | null; castingId: number | null; lines: readonly InvoiceLine[] }>;

/** Castings in the order of their first line; lines of the ticket as a whole last. */
export function groupByCasting(lines: readonly InvoiceLine[]): readonly LineGroup[] {
  const groups = new Map<number | null, InvoiceLine[]>();
  for (const line of lines) {
    const group = groups.get(line.castingId) ?? [];
    groups.set(line.castingId, [...group, line]);
  }
  return [...groups]
    .map(([castingId, own]) => ({ castingId, tag: own[0]?.tag ?? null, lines: own }))
    .sort((a, b) => Number(a.castingId === null) - Number(b.castingId === null));
}
