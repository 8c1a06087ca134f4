/** From typed text to a kept row: every question is asked before anything is written. Shared by the readings' requests. */
import type { z } from 'zod';
import type { Ctx, QueryCtx } from '../../host/implement.ts';
import { AppError, badField, notFound, ruleBroken } from '../../kernel/errors.ts';
import type { CastingId, OperationId, ReadingId } from '../../kernel/ids.ts';
import { unitShape } from '../../kernel/measure-units.ts';
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

export const benchOf = ({ db, today }: QueryCtx | Ctx, casting: CastingId): Bench =>
  openBench(readFacts(db, casting, today));

/** Where a person reads what happened: `installed height 3E1 1.712`. */
export const cellWords = (place: CellPlace, typed: string): string =>
  [place.quantity.words, place.spot?.label, place.point, typed].filter((part) => part).join(' ');

export function getPlace(bench: Bench, cell: CellInput, field: string): CellPlace {
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
export function checkOpen(bench: Bench, takenAt: string | null): string | null {
  const since = bench.facts.lockedSince;
  if (since === null) return null;
  if (takenAt !== null && takenAt < since) return 'arrived after';
  throw ruleBroken(
    'readings/signed-off',
    'This casting is signed off. What you typed is not kept. A lead reopens it and says why; then type it again.',
  );
}

/** The one place where typed text becomes a kept reading, with every question answered first. */
export function keepEntry(bench: Bench, place: CellPlace, entry: EntryInput, field: string): Kept {
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

export function checkTool(bench: Bench, entry: EntryInput, place: CellPlace, field: string): void {
  const tool = bench.facts.tools.find((it) => it.id === entry.tool);
  if (entry.tool !== null && (!tool || tool.retired)) {
    throw badField('readings/no-such-tool', field, 'This gauge is not in use here. Choose another.');
  }
  if (tool && unitShape(tool.unit).family !== place.quantity.family) {
    throw badField(
      'readings/wrong-tool',
      field,
      `${tool.name} (${tool.kind}) does not measure ${place.quantity.words}. Choose another gauge, or none.`,
    );
  }
  if (entry.readOn !== null && place.quantity.code !== 'installed-height') {
    throw badField('readings/read-on', field, 'Only an installed height says what it was read on.');
  }
}

export function checkOperation({ db }: Ctx, casting: CastingId, operation: OperationId | null): void {
  if (operation === null) return;
  const row = db.one(db.q.selectFrom('operation').select('casting_id').where('id', '=', operation));
  if (row?.casting_id !== casting) throw notFound('readings/no-such-operation', 'This operation');
}

export type Rest = Pick<NewReading, 'operation' | 'supersedes' | 'reason' | 'note'>;

export function insert(ctx: Ctx, bench: Bench, place: CellPlace, kept: Kept, entry: EntryInput, rest: Rest): ReadingId {
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
export const SILENT: EntryInput = {
  typed: '',
  unit: null,
  tool: null,
  readOn: null,
  mark: null,
  note: null,
  takenAt: null,
  sure: false,
};
export const word = (kind: Kept['kind'], typed: string): Kept => ({
  kind,
  typed,
  unit: null,
  value: null,
  mark: 'entered',
});

/** A reading that still stands, with its bench. @throws AppError `not-found`, or `conflict` when a later row took its place. */
export function getStanding(ctx: Ctx, id: ReadingId) {
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

export const subjectOf = (bench: Bench) => ['casting', bench.facts.casting.id] as const;
