/** Readings: kept as typed, all or none. */
import type { Handlers } from '../../host/implement.ts';
import { ruleBroken } from '../../kernel/errors.ts';
import { listShimsToFit } from '../compute/shim-plan.ts';
import type { readingsContract } from '../contract.ts';
import {
  benchOf,
  cellWords,
  checkOpen,
  checkOperation,
  checkTool,
  getPlace,
  insert,
  keepEntry,
  SILENT,
  subjectOf,
  word,
} from './keep.ts';

export const readingHandlers: Pick<
  Handlers<typeof readingsContract>,
  'readings/add-readings' | 'readings/fit-shims' | 'readings/mark-not-applicable'
> = {
  'readings/add-readings': {
    run(input, ctx) {
      const bench = benchOf(ctx, input.casting);
      checkOperation(ctx, input.casting, input.operation);
      const kept = input.rows.map((row, index) => {
        const field = `rows.${index}.typed`;
        const late = checkOpen(bench, row.takenAt);
        const place = getPlace(bench, row, field);
        checkTool(bench, row, place, field);
        return { row, place, kept: keepEntry(bench, place, row, field), note: late ?? row.note };
      });
      const readings = kept.map(({ row, place, kept: it, note }) =>
        insert(ctx, bench, place, it, row, { operation: input.operation, supersedes: null, reason: null, note }),
      );
      const said = kept.map(({ place, kept: it }) => cellWords(place, it.typed));
      return {
        output: { readings },
        activity: [
          {
            subject: subjectOf(bench),
            ticket: bench.facts.casting.ticket,
            words: `Read ${said.slice(0, 4).join(', ')}${said.length > 4 ? ` and ${said.length - 4} more` : ''}`,
            after: said,
          },
        ],
        touched: [bench.facts.casting.ticket],
      };
    },
  },
  'readings/fit-shims': {
    run({ casting, operation, spots }, ctx) {
      const bench = benchOf(ctx, casting);
      checkOpen(bench, null);
      checkOperation(ctx, casting, operation);
      const toFit = listShimsToFit(bench).filter((it) => spots === null || spots.includes(it.spot.id));
      const [first] = toFit;
      if (!first) {
        throw ruleBroken(
          'readings/nothing-to-fit',
          'No chosen shims wait to be written. Read the heights first; a valve that fails whatever is under it is not shimmed.',
        );
      }
      const rest = { operation, supersedes: null, reason: null, note: null };
      const readings = toFit.map(({ spot, typed }) =>
        insert(
          ctx,
          bench,
          getPlace(bench, { quantity: 'shims-fitted', spot: spot.id, point: null, stage: 'after' }, 'spots'),
          word('choice', typed),
          SILENT,
          rest,
        ),
      );
      const said = toFit.map(({ spot, typed }) => `${spot.label} ${typed}`);
      return {
        output: { readings, words: said.join(', ') },
        activity: [
          {
            subject: subjectOf(bench),
            ticket: bench.facts.casting.ticket,
            words: `Fitted shims: ${said.join(', ')}`,
            after: said,
          },
        ],
        touched: [bench.facts.casting.ticket],
      };
    },
  },
  'readings/mark-not-applicable': {
    run({ casting, operation, cells, reason }, ctx) {
      const bench = benchOf(ctx, casting);
      checkOpen(bench, null);
      checkOperation(ctx, casting, operation);
      const places = cells.map((cell, index) => getPlace(bench, cell, `cells.${index}`));
      const readings = places.map((place) => {
        const standing = bench.rows(place.quantity.code, place.spot, place.point, place.stage).current;
        const rest = { operation, supersedes: standing?.id ?? null, reason, note: null };
        return insert(ctx, bench, place, word('not_applicable', 'not applicable'), SILENT, rest);
      });
      return {
        output: { readings },
        activity: [
          {
            subject: subjectOf(bench),
            ticket: bench.facts.casting.ticket,
            words: `Not applicable: ${places.map((place) => cellWords(place, '')).join(', ')}`,
          },
        ],
        touched: [bench.facts.casting.ticket],
      };
    },
  },
};
