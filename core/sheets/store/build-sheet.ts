/** What the build sheet shows: as found beside after, what it changes, what was renewed, who measured and who signed. */
import { formatDayYear } from '../../kernel/format.ts';
import type { CastingId } from '../../kernel/ids.ts';
import { findText } from '../../shop/store.ts';
import { faceSurveys } from '../compute/face-surveys.ts';
import { factTables } from '../compute/fact-tables.ts';
import { isPrinted, type Measured } from '../compute/measured.ts';
import { placeTables } from '../compute/place-tables.ts';
import { recordTable } from '../compute/record-table.ts';
import { sizesToMake } from '../compute/sizes-to-make.ts';
import { GUARD_RULE } from '../compute/table-notes.ts';
import { list } from '../compute/words.ts';
import type { BuildSheetPaper } from '../contract/papers.ts';
import type { FactTable } from '../contract/reading-tables.ts';
import { getPrintedCasting, identityLines, metalWords, pieceWords, tagOf } from './castings.ts';
import { gaugeWords, readGauges } from './gauges.ts';
import { readMeasured, unitsOf } from './measured.ts';
import { readTicketPeople } from './people.ts';
import type { Scene } from './scene.ts';
import { readDone, readReaders, readSignatures } from './work-done.ts';

/** @throws AppError `not-found` for a casting that is not there */
export function readBuildSheet(scene: Scene, id: CastingId): Omit<BuildSheetPaper, 'head'> {
  const { db } = scene;
  const casting = getPrintedCasting(db, id);
  const { ticket, customer } = readTicketPeople(db, casting.ticket_id);
  const measured = readMeasured(scene, casting);
  const certified = ticket.certified === 1;
  const options = { certified, said: new Set<string>() };
  // A figure read once carries its unit itself.
  const grids = measured.sheets
    .filter(({ table }) => table.spotKind !== null)
    .map((sheet) => ({ ...sheet, rows: sheet.rows.filter((row) => isPrinted(measured, row)) }));
  const done = readDone(scene, casting, new Map(measured.facts.spots.map(({ id: spot, label }) => [spot, label])));
  const signed = readSignatures(scene, id);
  const gauges = readGauges(scene, id);
  return {
    number: String(ticket.number),
    // The bench sees no telephone numbers.
    customer: { name: customer.printName },
    tag: tagOf(casting),
    casting: list([pieceWords(casting).toLowerCase(), metalWords(casting.material), ...identityLines(casting)]),
    finished: done.last === null ? 'not finished' : formatDayYear(scene.localDay(done.last)),
    units: list(unitsOf(grids)) || 'beside each figure',
    guard: measured.facts.guard ? GUARD_RULE : null,
    certified: certified ? { gauges } : null,
    tables: placeTables(measured, options),
    facts: [...finishedSizes(measured), ...factTables(measured, options), ...recordTable(measured)],
    faces: faceSurveys(measured.bench),
    texts: [
      { heading: 'Done', words: `${list(done.done) || 'nothing yet'}.` },
      {
        heading: 'Declined or not done',
        words: `${list(done.notDone) || 'nothing was declined'}.`,
        named: [
          { label: 'Not done by us:', words: 'lash, piston to valve, cam timing and the condition of bolts.' },
          // Common practice, no source.
          { label: 'Before starting:', words: 'turn the engine by hand twice.' },
          ...done.waived.map((words) => ({ label: 'Let pass:', words })),
        ],
      },
      { heading: 'Renewed', words: `${list(done.renewed) || 'nothing'}.` },
      { heading: 'Used again', words: `${list(done.reused) || 'nothing counted'}.` },
      ...(certified
        ? []
        : [{ heading: 'Measured with', words: `${list(gauges.map(gaugeWords)) || 'no gauge named'}.` }]),
    ],
    signatures: [
      { label: 'Measured by', written: list(readReaders(scene, id)) },
      ...(signed.length === 0 ? [{ label: 'Signed off by', written: 'not signed off' }] : signed),
    ],
    disclaimer: disclaimerOf(scene),
  };
}

/** The sizes chosen, large enough to find, both units. */
function finishedSizes({ sheets }: Measured): FactTable[] {
  const rows = sizesToMake(sheets).map(({ label, first, second }) => ({
    words: label,
    small: '',
    found: null,
    after: { text: first, ...(second !== '' && { other: second }) },
    strong: true,
  }));
  return rows.length === 0 ? [] : [{ heading: 'Sizes made to', rows, notes: [] }];
}

function disclaimerOf({ db, today }: Scene): string {
  const text = findText(db, 'disclaimer', today)?.body ?? 'Whoever builds the engine must check every fit before use.';
  return `${text} Torque figures come from the engine's own data, not from us, unless a source is named here.`;
}
