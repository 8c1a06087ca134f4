/** Small print under a table of readings: limits with their sources, what stands beside the figures, decisions, replaced figures. */
import { findBenchTable } from '../../catalogue/compute/bench-tables.ts';
import { FIT_WORDS } from '../../readings/compute/cells.ts';
import type { Cell, LimitShown, Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';
import type { Said } from '../contract/reading-tables.ts';
import { isRead, type Measured } from './measured.ts';
import { list, sentence } from './words.ts';

/**
 * Decision rule of ISO 14253-1 as summarised publicly: the doubt counts against whoever makes the claim. U with k = 2, about
 * 95 % (from memory).
 */
export const GUARD_RULE =
  'A figure passes only if it lies inside its limits by at least the uncertainty of measuring it, and fails only if it lies outside by more. In between it is too close to call and is not a pass. Uncertainties (±) are expanded, k = 2, about 95 %; that of a computed figure combines those of its readings.';

/** `I at most 0.0040`, `target 1.500`. */
export function limitWords({ side, text, targetText }: LimitShown): string {
  const figures = text === '' ? `target ${targetText ?? ''}` : text;
  return side === 'any' ? figures : `${side} ${figures}`;
}

/** Where the limits of these rows come from: one source for all, or each with the rows it counts for. */
export function sourceNotes(rows: readonly SheetRow[]): Said[] {
  const bySource = new Map<string, Set<string>>();
  for (const row of rows) {
    for (const limit of row.limits) {
      const source = `${limit.source}${limit.checked ? '' : ', not checked by a second person'}`;
      bySource.set(source, (bySource.get(source) ?? new Set()).add(row.words));
    }
  }
  if (bySource.size === 0) return rows.length === 0 ? [] : [{ label: 'Limits', words: 'no limit known.' }];
  const [only] = bySource.keys();
  if (bySource.size === 1) return [{ label: 'Limits', words: `${only}.` }];
  const words = [...bySource].map(([source, quantities]) => `${list([...quantities])}: ${source}`);
  return [{ label: 'Limits', words: `${words.join('; ')}.` }];
}

/** How a figure came into the program is for the bench; that it was compared with a card is for the builder. */
const BENCH_ONLY: readonly string[] = [FIT_WORDS.implied, FIT_WORDS.last_digits, FIT_WORDS.from_tool];

/** What must be said beside a figure. */
export const marksOf = (cell: Cell): string[] => cell.marks.filter((mark) => !BENCH_ONLY.includes(mark));

/** `seat load: calculated, nominal spring`; with the places where it is not said of all. */
export function markNotes(sheet: Pick<Sheet, 'columns'>, rows: readonly SheetRow[]): Said[] {
  return [...Map.groupBy(rows, (row) => row.words)].flatMap(([words, group]) => {
    const cells = group.flatMap((row) =>
      row.cells.flatMap((cell, index) => (isRead(cell) ? [{ cell, place: sheet.columns[index]?.label ?? '' }] : [])),
    );
    const said = markWords(cells);
    return said.length === 0 ? [] : [{ label: `${sentence(words)}:`, words: `${said.join('; ')}.` }];
  });
}

function markWords(cells: readonly Readonly<{ cell: Cell; place: string }>[]): string[] {
  const all = new Set(cells.map(({ place }) => place));
  const marks = new Map<string, Set<string>>();
  for (const { cell, place } of cells) {
    for (const mark of marksOf(cell)) marks.set(mark, (marks.get(mark) ?? new Set()).add(place));
  }
  return [...marks].map(([mark, places]) => (places.size === all.size ? mark : `${mark} at ${[...places].join(' ')}`));
}

/** A lead's decision on a figure that does not simply pass. */
export const decisionNotes = (measured: Measured, sheet: Sheet, rows: readonly SheetRow[]): Said[] =>
  rows.flatMap((row) =>
    row.cells.flatMap((cell, index) => {
      const { decision } = cell;
      if (decision === null) return [];
      const what = [sheet.columns[index]?.label, row.words, cell.text].filter(Boolean).join(' ');
      const who = measured.names.get(decision.by) ?? decision.by;
      return [
        { label: `${decision.accepted ? 'Accepted' : 'Refused'}:`, words: `${what} by ${who}, ${decision.words}.` },
      ];
    }),
  );

/** Computed rows that cannot be said, by what is missing. */
export function missingNotes(rows: readonly SheetRow[]): Said[] {
  const byReason = new Map<string, Set<string>>();
  for (const row of rows) {
    const why = row.cells.flatMap((cell) => (cell.state === 'not measured' && cell.text === '' ? cell.marks : []));
    if (!row.derived || !row.shown || why.length === 0) continue;
    const reason = list([...new Set(why)]);
    byReason.set(reason, (byReason.get(reason) ?? new Set()).add(row.words));
  }
  if (byReason.size === 0) return [];
  const said = [...byReason].map(([reason, words]) => `${list([...words])} (${reason.replace(/^not known: /, '')})`);
  return [{ label: 'Not known:', words: `${said.join('; ')}.` }];
}

/** Sentences of a sheet that no table before it has said. Cautions of the bench are for the bench. */
export function otherNotes(sheet: Sheet, said: Set<string>): Said[] {
  const cautions = new Set((findBenchTable(sheet.table.code)?.notes ?? []).map(bare));
  const fresh = sheet.notes.filter((note) => !said.has(note) && !cautions.has(bare(note)));
  for (const note of fresh) said.add(note);
  return fresh.map((note) => ({ label: '', words: `${sentence(note).replace(/\.$/, '')}.` }));
}

const bare = (note: string): string => note.replace(/\.$/, '').toLowerCase();
