/** What the build sheet shows: as found beside after, what was renewed, what is left, who measured and who signed. */
import { formatDayYear } from '../../kernel/format.ts';
import type { CastingId } from '../../kernel/ids.ts';
import { showValue, withMark } from '../../kernel/measure-show.ts';
import type { UnitCode } from '../../kernel/measure-units.ts';
import type { Cell, LimitShown, Sheet, SheetRow } from '../../readings/compute/sheet-model.ts';
import { findText } from '../../shop/store.ts';
import { intakeCorrection } from '../compute/consequences.ts';
import { list, sentence } from '../compute/words.ts';
import type { BuildSheetPaper, ReadingRow, TotalLine, VerdictWord } from '../contract/papers.ts';
import { getPrintedCasting, identityLines, metalWords, type PrintedCasting, pieceWords, tagOf } from './castings.ts';
import { readTicketPeople } from './people.ts';
import type { Scene } from './scene.ts';
import { readSheets, unitsOf } from './spec.ts';
import { readDone, readGauges, readReaders, readSignatures } from './work-done.ts';

/** Rows a builder of the engine checks again before bolting down. Common practice, no source. */
const KEY_ROWS = [
  'height-with-shim',
  'seat-load',
  'open-load',
  'guide-clearance',
  'piston-clearance',
  'bore',
  'main-size',
];

/** @throws AppError `not-found` for a casting that is not there */
export function readBuildSheet(scene: Scene, id: CastingId): Omit<BuildSheetPaper, 'head'> {
  const { db } = scene;
  const casting = getPrintedCasting(db, id);
  const people = readTicketPeople(db, casting.ticket_id);
  const sheets = readSheets(scene, casting)
    .map(onlyRead)
    .filter(({ rows }) => rows.length > 0);
  const done = readDone(scene, casting);
  const signed = readSignatures(scene, id);
  return {
    number: String(people.ticket.number),
    // The bench sees no telephone numbers.
    customer: { name: people.customer.printName },
    tag: tagOf(casting),
    casting: list([pieceWords(casting).toLowerCase(), metalWords(casting.material), ...identityLines(casting)]),
    finished: done.last === null ? 'not finished' : formatDayYear(scene.localDay(done.last)),
    units: list(unitsOf(sheets)) || '-',
    tables: sheets.filter(({ table }) => table.spotKind !== null).map(tableOf),
    facts: [...sheets.filter(({ table }) => table.spotKind === null).map(factsOf), ...consequences(sheets, casting)],
    texts: [
      { heading: 'Done', words: `${list(done.done) || 'nothing yet'}.` },
      {
        heading: 'Declined or not done',
        words: `${list(done.notDone) || 'nothing was declined'}.`,
        named: [{ label: 'Not done by us:', words: 'lash, piston to valve, cam timing and the condition of bolts.' }],
      },
      { heading: 'Renewed', words: `${list(done.renewed) || 'nothing'}.` },
      { heading: 'Used again', words: `${list(done.reused) || 'nothing counted'}.` },
      { heading: 'Measured with', words: `${list(readGauges(scene, id)) || 'no gauge named'}.` },
      {
        heading: 'Limits',
        words: `${sourcesOf(sheets)}.`,
        named: done.waived.map((words) => ({ label: 'Let pass:', words })),
      },
    ],
    signatures: [
      { label: 'Measured by', written: list(readReaders(scene, id)) },
      ...(signed.length === 0 ? [{ label: 'Signed off by', written: 'not signed off' }] : signed),
    ],
    disclaimer: disclaimerOf(scene),
  };
}

/** As found and after say the same: one row is enough. */
const isRepeated = (row: SheetRow, rows: readonly SheetRow[]): boolean =>
  row.stage === 'before' &&
  rows.some(
    (other) =>
      other.stage === 'after' &&
      other.quantity === row.quantity &&
      other.point === row.point &&
      other.cells.every((cell, index) => cell.text === row.cells[index]?.text),
  );

const isRead = (cell: Cell): boolean =>
  cell.text !== '' && (cell.state === 'read' || cell.state === 'computed' || cell.state === 'not applicable');

/** Only rows in which something stands; none of a table in which nobody read anything, whatever the catalogue could compute. */
function onlyRead(sheet: Sheet): Sheet {
  const wasUsed = sheet.rows.some((row) => row.cells.some(({ state }) => state === 'read'));
  const rows = sheet.rows.filter((row) => row.cells.some(isRead));
  return { ...sheet, rows: wasUsed ? rows.filter((row) => !isRepeated(row, rows)) : [] };
}

function tableOf(sheet: Sheet): BuildSheetPaper['tables'][number] {
  const groups = [...Map.groupBy(sheet.columns, ({ group }) => group)].map(([title, columns]) => ({
    title: sentence(title.toLowerCase()),
    spots: columns.map(({ label }) => label),
  }));
  const verdicts = sheet.rows.flatMap((row) => row.cells.filter(isRead).flatMap(({ verdict: one }) => one?.name ?? []));
  const count = (name: string): number => verdicts.filter((one) => one === name).length;
  const judged = JUDGED.map((name) => ({ name, count: count(name) })).filter((one) => one.count > 0);
  const verdict: VerdictWord | undefined = judged.length === 1 && judged[0]?.name === 'pass' ? 'pass' : undefined;
  return {
    heading: `${sheet.table.words}, in the order the places lie on the bench, front to rear`,
    groups,
    rows: sheet.rows.map(readingRow),
    note: [...marksOf(sheet), ...decisionsOf(sheet), ...sheet.notes].map((words) => `${sentence(words)}.`).join(' '),
    ...(verdict && { verdict }),
    verdictWords:
      judged.length === 0 ? '' : `Figures with a limit: ${list(judged.map(({ name, count: n }) => `${n} ${name}`))}.`,
  };
}

/** What a judged figure may be; places not measured are empty and counted nowhere. */
const JUDGED = ['pass', 'fail', 'too close to call'];

/** Small print of computed rows, once a row: "seat load: calculated, nominal spring". */
const marksOf = (sheet: Sheet): string[] =>
  sheet.rows.flatMap((row) => {
    const marks = [...new Set(row.cells.filter(isRead).flatMap((cell) => cell.marks))];
    return marks.length === 0 ? [] : [`${row.words}: ${marks.join(', ')}`];
  });

function readingRow(row: SheetRow): ReadingRow {
  const point = row.pointWords === null ? '' : ` ${row.pointWords}`;
  const mark = row.unitMark === '' ? '' : `, ${row.unitMark}`;
  const verdicts = row.cells.map((cell) => verdictOf(cell));
  return {
    label: `${sentence(row.words)}${point}${row.stage === 'before' ? ', found' : ''}${mark}`,
    // A stack of shims breaks between its shims.
    values: row.cells.map((cell) => (isRead(cell) ? cell.text.replace(/\s*\+\s*/g, ' + ') : '')),
    limit: row.limits.map(limitWords).join('\n'),
    ...(row.stage === 'after' && KEY_ROWS.includes(row.quantity) && { key: true }),
    ...(verdicts.some((verdict) => verdict !== null) && { verdicts }),
  };
}

const limitWords = ({ side, text, targetText }: LimitShown): string =>
  `${side === 'any' ? '' : `${side} `}${text === '' ? `target ${targetText ?? ''}` : text}`;

/** Passing cells carry no mark, so that the others stand out. */
function verdictOf(cell: Cell): VerdictWord | null {
  if (cell.verdict === null || !isRead(cell)) return null;
  switch (cell.verdict.name) {
    case 'fail':
      return cell.verdict.direction ?? 'over';
    case 'too close to call':
      return 'close';
    default:
      return null;
  }
}

/** A lead's decision on a figure that does not simply pass. */
const decisionsOf = (sheet: Sheet): string[] =>
  sheet.rows.flatMap((row) =>
    row.cells.flatMap((cell, index) =>
      cell.decision === null
        ? []
        : [
            `${sheet.columns[index]?.label ?? ''} ${row.words} ${cell.text}: ${cell.decision.accepted ? 'accepted' : 'refused'} by ${cell.decision.by}, ${cell.decision.words}`,
          ],
    ),
  );

/** Figures read once, such as the deck. */
function factsOf(sheet: Sheet): BuildSheetPaper['facts'][number] {
  const rank = ({ stage, quantity }: SheetRow): number =>
    stage === 'before' ? 0 : quantity === 'stock-removed' ? 1 : 2;
  const rows = sheet.rows
    .toSorted((a, b) => rank(a) - rank(b))
    .map((row): TotalLine => {
      const cell = row.cells[0];
      const limit = row.quantity === 'thickness-left' ? '' : row.limits.map((one) => limitWords(one)).join(', ');
      const stage = row.stage === 'before' ? ', found' : '';
      return {
        words: `${sentence(row.words)}${stage}${limit === '' ? '' : `, limit ${limit}`}`,
        amount: cell === undefined ? '' : row.unit === null ? cell.text : withMark(cell.text, row.unit),
        strong: row.stage === 'after' && (row.quantity === 'thickness' || row.quantity === 'thickness-left'),
      };
    });
  return { heading: sheet.table.words, rows, note: list([...decisionsOf(sheet), ...sheet.notes]) };
}

/** What taking stock off changes for the builder. The chamber needs the sinking of the valves too: without it nothing is claimed. */
function consequences(sheets: readonly Sheet[], casting: PrintedCasting): BuildSheetPaper['facts'] {
  const rows = sheets.flatMap((sheet) => sheet.rows);
  const cut = rows.find(({ quantity }) => quantity === 'stock-removed')?.cells[0];
  if (cut === undefined || !isRead(cut)) return [];
  const volume = rows.find(({ quantity }) => quantity === 'chamber-volume');
  const chamber = volume ? 'measured, see the table' : 'not measured: surfacing only';
  const unit = cut.unit;
  return [
    {
      heading: 'What that changes for you',
      rows: [
        { words: 'The casting sits lower by', amount: unit === null ? cut.text : withMark(cut.text, unit) },
        { words: 'Chamber', amount: chamber },
        ...intakeRows(cut, casting),
      ],
      note: 'Check cam drive, lifter preload and intake fit. Turn the engine by hand twice before starting.',
    },
  ];
}

/** A V engine's manifold must follow its heads. */
function intakeRows(cut: Cell, { kind, engine_layout, bank_lean_udeg, face_lean_udeg }: PrintedCasting): TotalLine[] {
  if (kind !== 'head' || engine_layout !== 'v' || cut.value === null || cut.unit === null) return [];
  if (bank_lean_udeg === null || face_lean_udeg === null) {
    return [{ words: 'Intake faces', amount: 'lean not known, no correction reckoned' }];
  }
  const off = intakeCorrection(cut.value, { bankLean: bank_lean_udeg, faceLean: face_lean_udeg });
  if (off === null) return [{ words: 'Intake faces', amount: 'milling cannot bring the ports in line' }];
  const { unit } = cut;
  const say = (value: number): string => withMark(showValue(value, unit, decimalsFor(unit)), unit);
  return [
    { words: 'Off each intake face, both heads cut alike', amount: say(off.face) },
    { words: 'Off the bottom of the manifold', amount: say(off.bottom) },
  ];
}

const decimalsFor = (unit: UnitCode): number => (unit === 'in' ? 4 : 3);

function sourcesOf(sheets: readonly Sheet[]): string {
  const limits = sheets.flatMap(({ rows }) => rows.flatMap((row) => row.limits));
  if (limits.length === 0) return 'No limit known for what was measured';
  const notes = [...new Set(limits.flatMap((limit) => limit.notes))];
  return list([[...new Set(limits.map(({ source }) => source))].join('; '), ...notes]);
}

function disclaimerOf({ db, today }: Scene): string {
  const text = findText(db, 'disclaimer', today)?.body ?? 'Whoever builds the engine must check every fit before use.';
  return `${text} Torque figures come from the engine's own data, not from us, unless a source is named here.`;
}
