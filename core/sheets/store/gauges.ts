/** Gauges a casting was measured with: what each is worth and when it was checked. */
import type { Day } from '../../kernel/days.ts';
import { formatDayYear } from '../../kernel/format.ts';
import type { CastingId } from '../../kernel/ids.ts';
import { withMark } from '../../kernel/measure-show.ts';
import { isUnitCode } from '../../kernel/measure-units.ts';
import { showDoubt } from '../../readings/compute/doubt.ts';
import { list } from '../compute/words.ts';
import type { GaugeRow } from '../contract/reading-tables.ts';
import type { Scene } from './scene.ts';

type Row = Readonly<{
  name: string;
  kind: string;
  serial: string | null;
  unit: string;
  uncertainty: number | null;
  bp: number | null;
  checked: Day | null;
  due: Day | null;
}>;

/** Gauges of readings that stand, by name. */
export function readGauges({ db, today }: Scene, casting: CastingId): GaugeRow[] {
  const rows = db.sql<Row>(
    `SELECT t.name, t.kind, t.serial, t.unit, t.uncertainty, t.uncertainty_bp AS bp,
       (SELECT c.on_day FROM tool_check c WHERE c.tool_id = t.id ORDER BY c.id DESC LIMIT 1) AS checked,
       (SELECT c.next_due_on FROM tool_check c WHERE c.tool_id = t.id ORDER BY c.id DESC LIMIT 1) AS due
     FROM tool t WHERE t.id IN (SELECT r.tool_id FROM reading r WHERE r.casting_id = ? AND NOT EXISTS (SELECT 1 FROM reading n WHERE n.supersedes_id = r.id))
     ORDER BY t.name`,
    casting,
  );
  return rows.map((row) => ({
    name: row.name,
    kind: row.kind,
    serial: row.serial ?? '',
    doubt: doubtWords(row),
    checked: row.checked === null ? 'never checked' : `checked ${formatDayYear(row.checked)}`,
    due: row.due === null ? '' : `${row.due < today ? 'was due' : 'next'} ${formatDayYear(row.due)}`,
  }));
}

function doubtWords({ uncertainty, bp, unit }: Row): string {
  if (uncertainty !== null && isUnitCode(unit)) {
    const text = showDoubt(uncertainty, unit);
    if (text !== null) return `\u00b1${withMark(text, unit)}`;
  }
  return bp === null ? '' : `\u00b1${bp / 100} % of the reading`;
}

/** `G03, height micrometer (no. 77, ±0.0010 in, checked Mon 12 Jan 2026)`. */
export const gaugeWords = ({ name, kind, serial, doubt, checked, due }: GaugeRow): string =>
  `${list([name, kind])} (${list([serial === '' ? '' : `no. ${serial}`, doubt, checked, due.startsWith('was') ? due : ''])})`;
