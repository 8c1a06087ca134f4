/** Tables: what stands on a bench screen, a trial while typing, the choice of shims, and a lead's decisions. */
import { isTableFor } from '../../catalogue/compute/choices-by-metal.ts';
import type { Handlers, QueryCtx } from '../../host/implement.ts';
import { notFound, ruleBroken } from '../../kernel/errors.ts';
import type { CastingId } from '../../kernel/ids.ts';
import { openBench } from '../compute/bench.ts';
import { placeAt } from '../compute/place.ts';
import { previewOf } from '../compute/preview.ts';
import { composeSheet } from '../compute/sheet.ts';
import { shimChoicesOf } from '../compute/shim-choices.ts';
import type { readingsContract } from '../contract.ts';
import { readFacts } from '../store/facts.ts';
import { findTable, findTableRow, getQuantityId, listOperationCodes, listTableCodes } from '../store/known.ts';
import { insertDecision, insertRowShown } from '../store/readings.ts';

function getTable(db: QueryCtx['db'], code: string, casting: CastingId) {
  const table = findTable(db, code, casting);
  if (!table) throw notFound('readings/no-such-table', 'This table');
  return table;
}

export const tableHandlers: Pick<
  Handlers<typeof readingsContract>,
  | 'readings/get-table'
  | 'readings/list-tables'
  | 'readings/get-preview'
  | 'readings/get-shim-choice'
  | 'readings/decide-reading'
  | 'readings/show-row'
> = {
  'readings/get-table': {
    run: ({ casting, table }, { db, today }) =>
      composeSheet(readFacts(db, casting, today), getTable(db, table, casting)),
  },
  'readings/list-tables': {
    run({ casting }, { db, today }) {
      const facts = readFacts(db, casting, today);
      const operations = listOperationCodes(db, casting);
      const listed = listTableCodes(db, facts.casting.kind as never).flatMap((code) => {
        const table = getTable(db, code, casting);
        const has = table.spotKind === null || facts.spots.some((spot) => spot.kind === table.spotKind);
        if (!has || !isTableFor(code, facts.casting.material)) return [];
        const { summary, rows } = composeSheet(facts, table);
        const isWanted = table.operation !== null && operations.has(table.operation);
        const isRead = rows.some((row) => row.cells.some((cell) => cell.reading !== null));
        const rank = isWanted ? 0 : isRead ? 1 : 2;
        return [{ rank, shown: { code, words: table.words, summary, operation: table.operation } }];
      });
      return listed.toSorted((a, b) => a.rank - b.rank).map(({ shown }) => shown);
    },
  },
  'readings/get-preview': {
    run({ casting, table, typed, unit, tool, readOn, quantity, spot, point, stage }, { db, today }) {
      const facts = readFacts(db, casting, today);
      const trial = { cell: { quantity, spot, point, stage }, typed, unit, tool, readOn };
      return previewOf(facts, getTable(db, table, casting), trial);
    },
  },
  'readings/get-shim-choice': {
    run({ casting, spot }, { db, today }) {
      const choices = shimChoicesOf(readFacts(db, casting, today), spot);
      if (!choices) throw notFound('readings/no-such-valve', 'This valve');
      return choices;
    },
  },
  'readings/decide-reading': {
    run({ casting, accept, words, ...cell }, { db, today }) {
      const bench = openBench(readFacts(db, casting, today));
      const place = placeAt(bench, cell);
      if (!place) throw notFound('readings/no-such-cell', 'This place to measure');
      const known = bench.known(cell.quantity, place.spot, cell.point, cell.stage);
      const verdict = bench.verdict(cell.quantity, cell.stage, place.spot?.side ?? null, known);
      if (verdict.name !== 'fail' && verdict.name !== 'too close to call') {
        throw ruleBroken(
          'readings/nothing-to-decide',
          `This reads ${verdict.name}. Only a figure that fails or is too close to call is decided.`,
        );
      }
      const { ticket } = bench.facts.casting;
      const value = known?.value ?? null;
      const quantityId = getQuantityId(db, cell.quantity);
      insertDecision(db, { ...cell, casting, ticket, quantityId, value, accepted: accept, words });
      return {
        output: { value },
        activity: [
          {
            subject: ['casting', casting],
            ticket,
            words: `${accept ? 'Accepted' : 'Refused'} ${place.quantity.words} ${place.spot?.label ?? ''}: ${words}`,
            after: { verdict: verdict.name, value },
          },
        ],
        touched: [ticket],
      };
    },
  },
  'readings/show-row': {
    run({ casting, table, shown, ...row }, { db, today }) {
      const { ticket } = readFacts(db, casting, today).casting;
      const id = findTableRow(db, table, row);
      if (id === undefined) throw notFound('readings/no-such-row', 'This row');
      insertRowShown(db, { casting, ticket, row: id, shown });
      return {
        output: { shown },
        activity: [
          { subject: ['casting', casting], ticket, words: `${shown ? 'Shows' : 'Hides'} the row ${row.quantity}` },
        ],
        touched: [ticket],
      };
    },
  },
};
