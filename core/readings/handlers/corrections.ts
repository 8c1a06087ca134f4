/** Corrections: a later row takes the place of an earlier one, which stays for ever. */
import type { Handlers } from '../../host/implement.ts';
import { ruleBroken } from '../../kernel/errors.ts';
import type { readingsContract } from '../contract.ts';
import { cellWords, checkOpen, checkTool, getStanding, insert, keepEntry, SILENT, subjectOf, word } from './keep.ts';

export const correctionHandlers: Pick<
  Handlers<typeof readingsContract>,
  'readings/supersede-reading' | 'readings/take-back-reading' | 'readings/choose-reading'
> = {
  'readings/supersede-reading': {
    run({ reading: id, reason, ...entry }, ctx) {
      const { reading, bench, place } = getStanding(ctx, id);
      checkOpen(bench, entry.takenAt);
      checkTool(bench, entry, place, 'typed');
      const kept = keepEntry(bench, place, entry, 'typed');
      const made = insert(ctx, bench, place, kept, entry, {
        operation: reading.operation,
        supersedes: id,
        reason,
        note: entry.note,
      });
      return {
        output: { reading: made },
        activity: [
          {
            subject: subjectOf(bench),
            ticket: bench.facts.casting.ticket,
            words: `Corrected ${cellWords(place, reading.typed)} to ${kept.typed}${reason ? `: ${reason}` : ''}`,
            before: reading.typed,
            after: kept.typed,
          },
        ],
        touched: [bench.facts.casting.ticket],
      };
    },
  },
  'readings/take-back-reading': {
    run({ reading: id, reason }, ctx) {
      const { reading, bench, place } = getStanding(ctx, id);
      checkOpen(bench, null);
      const rest = { operation: reading.operation, supersedes: id, reason, note: null };
      const made = insert(ctx, bench, place, word('taken_back', 'taken back'), SILENT, rest);
      return {
        output: { reading: made },
        activity: [
          {
            subject: subjectOf(bench),
            ticket: bench.facts.casting.ticket,
            words: `Took back ${cellWords(place, reading.typed)}`,
            before: reading.typed,
          },
        ],
        touched: [bench.facts.casting.ticket],
      };
    },
  },
  'readings/choose-reading': {
    run({ reading: id, reason }, ctx) {
      const { reading, bench, place } = getStanding(ctx, id);
      checkOpen(bench, null);
      const { choose } = bench.rows(place.quantity.code, place.spot, place.point, place.stage);
      if (!choose.some((it) => it.id === id)) {
        throw ruleBroken('readings/nothing-to-choose', 'There is only one reading here now. Look at the table again.');
      }
      for (const other of choose.filter((it) => it.id !== id)) {
        insert(ctx, bench, place, word('taken_back', 'taken back'), SILENT, {
          operation: other.operation,
          supersedes: other.id,
          reason: reason ?? `${reading.typed} stands`,
          note: null,
        });
      }
      return {
        output: { reading: id },
        activity: [
          {
            subject: subjectOf(bench),
            ticket: bench.facts.casting.ticket,
            words: `Chose ${cellWords(place, reading.typed)}`,
            before: choose.map((it) => it.typed),
            after: reading.typed,
          },
        ],
        touched: [bench.facts.casting.ticket],
      };
    },
  },
};
