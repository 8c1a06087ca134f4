/** Readings: shown as judged tables, kept as typed, corrected by later rows. */
import type { z } from 'zod';
import type { Ctx, Handlers, QueryCtx } from '../../host/implement.ts';
import { AppError, badField, notFound, ruleBroken } from '../../kernel/errors.ts';
import type { CastingId, OperationId, ReadingId } from '../../kernel/ids.ts';
import { type Bench, openBench } from '../compute/bench.ts';
import type { CellPlace } from '../compute/cells.ts';
import { type Kept, readEntry } from '../compute/entry.ts';
import type { Reading } from '../compute/model.ts';
import { placeAt } from '../compute/place.ts';
import type { readingsContract } from '../contract.ts';
import { readFacts } from '../store/facts.ts';
import { getQuantityId } from '../store/known.ts';
import { findReading, insertReading, isSuperseded, type NewReading } from '../store/readings.ts';

type Contract = typeof readingsContract;
type AddInput = z.output<Contract['readings/add-readings']['input']>;
type EntryInput = Omit<AddInput['rows'][number], 'quantity' | 'spot' | 'point' | 'stage'>;
type CellInput = Pick<Reading, 'quantity' | 'spot' | 'point' | 'stage'>;

const benchOf = ({ db, today }: QueryCtx | Ctx, casting: CastingId): Bench => openBench(readFacts(db, casting, today));

/** Where a person reads what happened: `installed height 3E1 1.712`. */
const cellWords = (place: CellPlace, typed: string): string =>
  [place.quantity.words, place.spot?.label, place.point, typed].filter((part) => part).join(' ');

function getPlace(bench: Bench, cell: CellInput, field: string): CellPlace {
  const place = placeAt(bench, cell);
  if (!place) {
    throw badField('readings/no-such-cell', field, 'This casting has no such place to measure. Load the table again.');
  }
  return place;
}

/**
 * Signed off means closed. What a tablet took before the signature and could not send is kept with a note.
 *
 * @returns the note, or null.
 */
function checkOpen(bench: Bench, takenAt: string | null): string | null {
  const since = bench.facts.lockedSince;
  if (since === null) return null;
  if (takenAt !== null && takenAt < since) return 'arrived after';
  throw ruleBroken(
    'readings/signed-off',
    'This casting is signed off. What you typed is not kept. A lead reopens it and says why; then type it again.',
  );
}

/** The one place where typed text becomes a kept reading, with every question answered first. */
function keepEntry(bench: Bench, place: CellPlace, entry: EntryInput, field: string): Kept {
  const { read, doubt, keep } = readEntry(bench, place, entry.typed, entry.unit);
  if (read.kind === 'ask') {
    throw badField('readings/ask', field, read.question, { facts: { choices: read.choices } });
  }
  if (!keep) {
    const refused = read.kind === 'refused' ? read : { code: 'readings/empty', message: 'Type the reading.' };
    throw badField(refused.code, field, refused.message);
  }
  if (doubt && !entry.sure) {
    throw badField('readings/unlikely', field, doubt.question, { facts: { meant: doubt.meant } });
  }
  return keep;
}

function checkTool(bench: Bench, entry: EntryInput, place: CellPlace, field: string): void {
  if (entry.tool === null) return;
  if (!bench.facts.tools.some((tool) => tool.id === entry.tool && !tool.retired)) {
    throw badField('readings/no-such-tool', field, 'This gauge is not in use here. Choose another.');
  }
  if (entry.readOn !== null && place.quantity.code !== 'installed-height') {
    throw badField('readings/read-on', field, 'Only an installed height says what it was read on.');
  }
}

function checkOperation({ db }: Ctx, casting: CastingId, operation: OperationId | null): void {
  if (operation === null) return;
  const row = db.one(db.q.selectFrom('operation').select('casting_id').where('id', '=', operation));
  if (row?.casting_id !== casting) throw notFound('readings/no-such-operation', 'This operation');
}

type Rest = Pick<NewReading, 'operation' | 'supersedes' | 'reason' | 'note'>;

function insert(ctx: Ctx, bench: Bench, place: CellPlace, kept: Kept, entry: EntryInput, rest: Rest): ReadingId {
  return insertReading(ctx.db, {
    ...kept,
    mark: entry.mark ?? kept.mark,
    casting: bench.facts.casting.id,
    ticket: bench.facts.casting.ticket,
    quantity: place.quantity.code,
    quantityId: getQuantityId(ctx.db, place.quantity.code),
    spot: place.spot?.id ?? null,
    point: place.point,
    stage: place.stage,
    tool: entry.tool,
    readOn: entry.readOn,
    at: entry.takenAt ?? ctx.now,
    received: ctx.now,
    device: ctx.session.device,
    ...rest,
  });
}

/** A row that closes or marks a cell without a figure. */
const SILENT: EntryInput = {
  typed: '',
  unit: null,
  tool: null,
  readOn: null,
  mark: null,
  note: null,
  takenAt: null,
  sure: false,
};
const word = (kind: Kept['kind'], typed: string): Kept => ({ kind, typed, unit: null, value: null, mark: 'entered' });

/** A reading that still stands, with its bench. @throws AppError `not-found`, or `conflict` when a later row took its place. */
function getStanding(ctx: Ctx, id: ReadingId) {
  const found = findReading(ctx.db, id);
  if (!found) throw notFound('readings/not-here', 'This reading');
  if (isSuperseded(ctx.db, id)) {
    throw new AppError(
      'conflict',
      'readings/changed-meanwhile',
      'Somebody else already changed this reading. Yours is not kept. Look at the new one, then type again.',
    );
  }
  const bench = benchOf(ctx, found.casting);
  return { ...found, bench, place: getPlace(bench, found.reading, 'reading') };
}

const subjectOf = (bench: Bench) => ['casting', bench.facts.casting.id] as const;

export const readingHandlers: Pick<
  Handlers<Contract>,
  | 'readings/add-readings'
  | 'readings/supersede-reading'
  | 'readings/mark-not-applicable'
  | 'readings/take-back-reading'
  | 'readings/choose-reading'
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
