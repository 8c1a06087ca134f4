/** Puts castings with their pieces and marks on a ticket, and holds those whose stamp is in the house already. */
import type { z } from 'zod';
import { metalView, titleOf } from '../../castings/compute.ts';
import type { AddedCasting, NewCasting } from '../../castings/contract.ts';
import {
  type CastingRow,
  getCasting,
  insertCasting,
  insertMark,
  listCastings,
  lockOf,
  sameStampHere,
} from '../../castings/store.ts';
import type { ReadDb, WriteDb } from '../../db/query.ts';
import type { Ctx } from '../../host/implement.ts';
import { insertArrivals } from '../../intake/store.ts';
import type { CastingId, TicketId } from '../../kernel/ids.ts';

type Added = z.output<typeof AddedCasting>;

/** @returns what was added, in order, and other tickets that were touched (the other casting of a doubtful stamp) */
export function addCastings(ctx: Ctx, ticket: TicketId, typed: readonly z.output<typeof NewCasting>[], path: string) {
  const made = typed.map((one, index) => addOne(ctx, ticket, one, path === '' ? String(index) : `${path}.${index}`));
  const all = listCastings(ctx.db, ticket);
  const castings: Added[] = made.map(({ id, containers, doubt }) => {
    const row = getCasting(ctx.db, id);
    return {
      castingId: id,
      tagNo: row.tag_no,
      title: titleFor(row, all),
      metal: metalView(row.material, row.metal_confirmed_at),
      containers: containers.map((one) => ({ containerId: one.id, label: one.label })),
      identityHold: doubt?.words ?? null,
    };
  });
  return { castings, alsoTouched: made.flatMap(({ doubt }) => doubt?.tickets ?? []) };
}

/** "Head 1 of 2, left": counted among castings of the same kind on the ticket. */
function titleFor(row: CastingRow, all: readonly CastingRow[]): string {
  const alike = all.filter((one) => one.kind === row.kind);
  return titleOf(row.kind, alike.findIndex((one) => one.id === row.id) + 1, alike.length, row.position);
}

function addOne(ctx: Ctx, ticket: TicketId, typed: z.output<typeof NewCasting>, path: string) {
  const { db, now } = ctx;
  const row = insertCasting(db, ticket, typed, path, now);
  const { items, containers: bags, cameAssembled } = typed;
  const containers = insertArrivals(db, row, { items, containers: bags, cameAssembled }, path);
  const stage = lockOf(db, row) === null ? 'arrival' : 'finding';
  for (const [index, mark] of typed.marks.entries()) insertMark(db, row, mark, stage, `${path}.marks.${index}`);
  return { id: row.id, containers, doubt: holdSameStamp(ctx, row) };
}

/**
 * A stamp that another casting in the house carries: both are tagged, both are held, nothing of either leaves.
 *
 * @returns null when the stamp is its own
 */
export function holdSameStamp(ctx: Ctx, row: CastingRow): { words: string; tickets: TicketId[] } | null {
  const { db, today } = ctx;
  if (row.shop_stamp === null) return null;
  const others = sameStampHere(db, row.shop_stamp, row.id);
  if (others.length === 0) return null;
  const tags = others.map((one) => one.tag_no).join(', ');
  const words = `Stamp ${row.shop_stamp} is on ${row.tag_no} and on ${tags}. Check both before going on.`;
  for (const one of [row, ...others]) {
    if (hasIdentityHold(db, one.id)) continue;
    db.add('hold', {
      ticket_id: one.ticket_id,
      casting_id: one.id,
      reason: 'identity',
      owner_role: 'lead',
      follow_up_on: today,
      words,
    });
  }
  return { words, tickets: others.map((one) => one.ticket_id) };
}

const hasIdentityHold = (db: ReadDb | WriteDb, casting: CastingId): boolean =>
  db.one(
    db.q
      .selectFrom('hold')
      .select('id')
      .where('casting_id', '=', casting)
      .where('reason', '=', 'identity')
      .where('closed_at', 'is', null),
  ) !== undefined;
