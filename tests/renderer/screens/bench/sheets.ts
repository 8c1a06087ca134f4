/** A small judged sheet as the host answers it: four valves of a twin-cam head, one read, one typed row and two computed. */
import type { Cell, Column, LimitShown, ReadingShown, Sheet, SheetRow } from '#core/readings/compute/sheet-model.ts';

const PASS = { name: 'pass', direction: null, cannotProve: false } as const;
const NOT = { name: 'not measured', direction: null, cannotProve: false } as const;

const limit = {
  id: 1,
  side: 'any',
  low: 34_750_000,
  high: 35_250_000,
  target: 35_000_000,
  unit: 'mm',
  text: '34.75 – 35.25',
  targetText: '35.00',
  source: 'casting type sheet [demo]',
  forWhat: 'casting_type',
  checked: true,
  notes: [],
} as unknown as LimitShown;

export const readingOf = (id: number, typed: string): ReadingShown =>
  ({
    id,
    text: typed,
    typed,
    unit: 'mm',
    mark: 'entered',
    readOn: null,
    tool: null,
    by: 'DK',
    at: '2026-03-09T14:00:00.000Z',
    reason: null,
  }) as unknown as ReadingShown;

export const cellOf = (typed: string | null, id = 1, earlier: readonly string[] = []): Cell =>
  ({
    state: typed === null ? 'not measured' : 'read',
    text: typed ?? '',
    value: typed === null ? null : Math.round(Number(typed) * 1_000_000),
    unit: 'mm',
    verdict: typed === null ? NOT : PASS,
    word: typed === null ? 'not measured' : 'pass',
    limit: null,
    marks: [],
    reading: typed === null ? null : readingOf(id, typed),
    earlier: earlier.map((text, n) => readingOf(100 + n, text)),
    choose: [],
    decision: null,
  }) as unknown as Cell;

const column = (label: string, n: number): Column =>
  ({
    spot: n,
    label,
    words: `cylinder ${label[0]}, ${label.includes('E') ? 'exhaust' : 'intake'}`,
    group: label.includes('E') ? 'EXHAUST SIDE' : 'INTAKE SIDE',
    side: label.includes('E') ? 'E' : 'I',
    cylinder: Number(label[0]),
    bank: 'none',
    row: label.includes('E') ? 2 : 1,
    benchOrder: Number(label[0]),
    verdict: NOT,
    word: 'not measured',
    because: null,
    shims: null,
  }) as unknown as Column;

export const rowOf = (
  quantity: string,
  words: string,
  cells: readonly Cell[],
  more: Partial<SheetRow> = {},
): SheetRow =>
  ({
    key: `${quantity}||before`,
    quantity,
    words,
    point: null,
    pointWords: null,
    stage: 'before',
    derived: false,
    family: 'length',
    unit: 'mm',
    unitMark: 'mm',
    decimals: 2,
    shown: true,
    entry: { rule: 'none' },
    choices: [],
    limits: [limit],
    cells,
    ...more,
  }) as SheetRow;

export function sheetOf(cells: readonly Cell[], more: Partial<Sheet> = {}): Sheet {
  const columns = ['1I', '2I', '1E', '2E'].map((label, n) => column(label, n + 1));
  return {
    casting: {
      id: 1,
      ticket: 1,
      tag: 30921,
      kind: 'head',
      words: 'head',
      material: 'aluminium',
      position: 'single',
      typeCode: 'TW-4',
    },
    table: { code: 'heights', words: 'Installed height', spotKind: 'valve' },
    columns,
    rows: [
      rowOf('installed-height', 'height read', cells),
      rowOf('height-with-shim', 'with shims', cells, { key: 'height-with-shim||after', stage: 'after', derived: true }),
    ],
    summary: '1 pass, 3 not measured',
    counts: { pass: 1, fail: 0, 'too close to call': 0, 'not measured': 3, 'no limit known': 0 },
    toDo: [],
    picking: [],
    pickingText: '',
    spread: null,
    tools: [],
    notes: [],
    guard: false,
    locked: false,
    ...more,
  } as unknown as Sheet;
}
