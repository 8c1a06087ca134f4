/** What lists read is what the facts say, or the comparison says where not. */
import { describe, expect, it } from 'vitest';
import { writeDb } from '#core/db/query.ts';
import { moment } from '#core/kernel/days.ts';
import { compareAll, projectTickets, recomputeAll } from '#core/state/store/projections.ts';
import { startTestHost, TEST_NOW } from '#tests/kit/test-host.ts';
import { checkIn } from '../../floor/builders.ts';

describe('compareAll', () => {
  it('finds a row that no longer says what the facts say, and recomputing mends it', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    expect(compareAll(host.db)).toEqual([]);
    // A writer that forgot to name the ticket it touched.
    host.sqlite.prepare('UPDATE ticket SET rush_bp = 2500 WHERE id = ?').run(job.ticketId);
    host.sqlite.prepare("UPDATE ticket_now SET where_words = 'nowhere' WHERE ticket_id = ?").run(job.ticketId);
    const stale = compareAll(host.db);
    expect([...new Set(stale.map((row) => row.column))].sort()).toEqual(['rush', 'to_pay_cents', 'where_words']);
    const db = writeDb(host.sqlite, { now: moment(TEST_NOW), by: null });
    expect(recomputeAll(db)).toHaveLength(stale.length);
    expect(compareAll(host.db)).toEqual([]);
  });

  it('misses no row: an open operation without one, and a row without its operation', async () => {
    const host = await startTestHost();
    const job = await checkIn(host);
    host.sqlite.prepare('DELETE FROM operation_now WHERE ticket_id = ?').run(job.ticketId);
    expect(compareAll(host.db).map((row) => [row.column, row.kept])).toEqual([
      ['row', null],
      ['row', null],
    ]);
    projectTickets(writeDb(host.sqlite, { now: moment(TEST_NOW), by: null }), [job.ticketId as never]);
    host.sqlite.prepare('UPDATE operation SET finished_at = ? WHERE ticket_id = ?').run(TEST_NOW, job.ticketId);
    expect(
      compareAll(host.db)
        .filter((row) => row.column === 'row')
        .map((row) => row.facts),
    ).toEqual([null, null]);
  });
});
