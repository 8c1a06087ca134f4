/** Two heads of one engine are cut alike: a difference is said at the end of the second, naming both tags. */
import type { ReadDb } from '../../db/query.ts';
import type { Day } from '../../kernel/days.ts';
import type { CastingId } from '../../kernel/ids.ts';
import { withMark } from '../../kernel/measure-show.ts';
import { openBench } from '../../readings/compute/bench.ts';
import { cellAt } from '../../readings/compute/cells.ts';
import { readFacts } from '../../readings/store/facts.ts';
import type { CastingFact, OperationFact } from '../../state/compute/facts.ts';
import type { TicketNow } from '../../state/compute/tickets.ts';

type Finished = Readonly<{ operation: OperationFact; casting: CastingFact; now: TicketNow }>;

/** The sentence when stock removed differs between the castings of a pair; empty when alike or not known yet. */
export function pairWarnings(
  { db, today }: Readonly<{ db: ReadDb; today: Day }>,
  { operation, casting, now }: Finished,
): string[] {
  if (operation.kind.section !== 'surface' || casting.pair === null) return [];
  const own = stockRemoved(db, casting.id, today);
  if (own === null) return [];
  return now.known.facts.castings
    .filter((other) => other.id !== casting.id && other.pair === casting.pair)
    .flatMap((other) => {
      const theirs = stockRemoved(db, other.id, today);
      if (theirs === null || theirs.value === own.value) return [];
      return [`Stock removed differs: ${casting.tag} ${own.text}, ${other.tag} ${theirs.text}. The pair is cut alike.`];
    });
}

function stockRemoved(db: ReadDb, casting: CastingId, today: Day): { value: number; text: string } | null {
  const bench = openBench(readFacts(db, casting, today));
  const quantity = bench.quantity('stock-removed');
  if (!quantity) return null;
  const unit = bench.rows('thickness', null, null, 'after').current?.unit ?? null;
  const cell = cellAt(bench, { quantity, spot: null, point: null, stage: 'after', unit });
  return cell.value === null || unit === null ? null : { value: cell.value, text: withMark(cell.text, unit) };
}
