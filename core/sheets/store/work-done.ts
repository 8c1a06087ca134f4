/** What was done to a casting, by whom, with which gauges, and what was renewed. */
import type { Moment } from '../../kernel/days.ts';
import type { CastingId, SpotId } from '../../kernel/ids.ts';
import { ticketNow } from '../../state/compute/tickets.ts';
import { loadFacts } from '../../state/store/load-facts.ts';
import { list, sentence } from '../compute/words.ts';
import { listItems, type PrintedCasting } from './castings.ts';
import type { Scene } from './scene.ts';

export type Done = Readonly<{
  /** When the last operation was finished; null while something is open. */
  last: Moment | null;
  done: readonly string[];
  notDone: readonly string[];
  renewed: readonly string[];
  reused: readonly string[];
  /** Order rules a lead let pass. */
  waived: readonly string[];
}>;

/** Operations by what became of them, in the customer's words. @param places what each place is called on this casting */
export function readDone(scene: Scene, casting: PrintedCasting, places: ReadonlyMap<SpotId, string>): Done {
  const facts = loadFacts(scene.db, casting.ticket_id);
  const operations = ticketNow(facts).operations.filter(({ castingId }) => castingId === casting.id);
  const rows = listOperations(scene, casting.id);
  const words = (id: number): string => rows.find((row) => row.id === id)?.customer_words ?? '';
  const live = operations.filter((now) => now.live);
  const finished = live.filter(({ word }) => word === 'done' || word === 'signed');
  const moments = rows.flatMap((row) => row.finished_at ?? []).sort();
  return {
    last: live.length > 0 && finished.length === live.length ? (moments.at(-1) ?? null) : null,
    done: finished.map(({ id }) => withResult(scene, id, words(id))),
    notDone: operations
      .filter(({ word }) => word === 'declined' || word === 'not needed' || word === 'requested' || word === 'quoted')
      .map(
        ({ id, word }) =>
          `${words(id)}: ${word === 'requested' || word === 'quoted' ? 'not agreed' : word}${reasonOf(rows, id)}`,
      ),
    renewed: renewedOf(
      scene,
      casting,
      rows.filter((row) => finished.some(({ id }) => id === row.id)),
      places,
    ),
    reused: itemsOf(scene, casting.id, 'in_casting'),
    waived: live.flatMap(({ waived }) =>
      waived.map(({ words: said, waiver }) => list([said, waiver?.reason, waiver?.by])),
    ),
  };
}

const listOperations = ({ db }: Scene, casting: CastingId) =>
  db.all(
    db.q
      .selectFrom('operation as o')
      .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .select(['o.id', 'o.finished_at', 'o.not_needed_why', 'k.customer_words', 'k.code'])
      .where('o.casting_id', '=', casting)
      .orderBy('o.position')
      .orderBy('o.id'),
  );
type Row = ReturnType<typeof listOperations>[number];

const reasonOf = (rows: readonly Row[], id: number): string => {
  const why = rows.find((row) => row.id === id)?.not_needed_why ?? null;
  return why === null ? '' : ` (${why})`;
};

/** "pressure test (none found)". */
function withResult({ db }: Scene, operation: number, words: string): string {
  const result = db.sql<{ typed: string }>(
    `SELECT r.typed FROM reading r JOIN quantity q ON q.id = r.quantity_id
     WHERE r.operation_id = ? AND q.code = 'crack-result' AND NOT EXISTS (SELECT 1 FROM reading n WHERE n.supersedes_id = r.id)
     ORDER BY r.id DESC LIMIT 1`,
    operation,
  )[0];
  return result ? `${words} (${result.typed})` : words;
}

/** Parts fitted, and places at which an operation worked: "guides 1I, 3E". */
function renewedOf(
  scene: Scene,
  casting: PrintedCasting,
  finished: readonly Row[],
  places: ReadonlyMap<SpotId, string>,
): string[] {
  const { db } = scene;
  const parts = db.all(
    db.q
      .selectFrom('part_line')
      .select(['words', 'quantity', 'new_used', 'source'])
      .where('ticket_id', '=', casting.ticket_id)
      .where((eb) => eb.or([eb('casting_id', '=', casting.id), eb('casting_id', 'is', null)]))
      .where('fitted_at', 'is not', null)
      .orderBy('id'),
  );
  const spots = db.sql<{ operation: number; spot: SpotId; label: string }>(
    `SELECT s.operation_id AS operation, p.id AS spot, p.label FROM operation_spot s JOIN spot p ON p.id = s.spot_id
     WHERE s.operation_id IN (SELECT id FROM operation WHERE casting_id = ?) ORDER BY p.bench_order`,
    casting.id,
  );
  const atPlaces = finished.flatMap((row) => {
    const labels = spots
      .filter(({ operation }) => operation === row.id)
      .map(({ spot, label }) => places.get(spot) ?? label);
    return labels.length === 0 ? [] : [`${row.customer_words} at ${labels.join(' ')}`];
  });
  const owner = (source: string) => (source === 'customer' ? ", customer's own" : '');
  const replaced = itemsOf(scene, casting.id, 'replaced').map((words) => `${words} (those that came replaced)`);
  return [
    ...parts.map((part) => `${part.quantity} ${part.words}, ${part.new_used}${owner(part.source)}`),
    ...atPlaces,
    ...replaced,
  ];
}

/** What came with it, by what became of it. */
function itemsOf({ db }: Scene, casting: CastingId, fate: 'in_casting' | 'replaced'): string[] {
  const fates = new Map(
    db
      .sql<{ item: number; fate: string }>(
        'SELECT arrival_item_id AS item, fate FROM item_fate WHERE arrival_item_id IN (SELECT id FROM arrival_item WHERE casting_id = ?) ORDER BY id',
        casting,
      )
      .map((row) => [row.item, row.fate]),
  );
  return listItems(db, casting)
    .filter(({ id }) => fates.get(id) === fate)
    .map(({ counted, words }) => `${counted ?? ''} ${words}`.trim());
}

/** Names of those whose readings stand. */
export const readReaders = ({ db }: Scene, casting: CastingId): string[] =>
  db
    .sql<{ name: string }>(
      `SELECT s.name FROM reading r JOIN staff s ON s.id = r.created_by
       WHERE r.casting_id = ? AND r.kind <> 'taken_back' AND NOT EXISTS (SELECT 1 FROM reading n WHERE n.supersedes_id = r.id)
       GROUP BY s.id ORDER BY MIN(r.id)`,
      casting,
    )
    .map(({ name }) => name);

/** Signatures that stand: who signed when, and whether one person signed twice with the owner's yes. */
export function readSignatures(scene: Scene, casting: CastingId): { label: string; written: string }[] {
  const { db } = scene;
  return db
    .all(
      db.q
        .selectFrom('sign_off as o')
        .innerJoin('staff as s', 's.id', 'o.staff_id')
        .leftJoin('sign_off_reopened as r', 'r.sign_off_id', 'o.id')
        .leftJoin('staff as y', 'y.id', 'o.same_person_ok_by')
        .select(['o.place', 'o.created_at', 's.name', 'y.name as ok_by'])
        .where('o.casting_id', '=', casting)
        .where('r.id', 'is', null)
        .orderBy('o.id'),
    )
    .map((row) => ({
      label: sentence(
        `${row.place === 'first' ? 'signed off' : 'second signature'} by${row.ok_by === null ? '' : ` (same person, yes of ${row.ok_by})`}`,
      ),
      written: `${row.name}, ${scene.shortMoment(row.created_at)}`,
    }));
}
