import { describe, expect, it } from 'vitest';
import { id } from '#core/kernel/ids.ts';
import { exportRows } from '#core/readings/compute/export.ts';
import type { ReadingsExport } from '#core/readings/compute/export-model.ts';
import { csvOf, jsonOf } from '#core/readings/compute/export-text.ts';
import type { Facts } from '#core/readings/compute/model.ts';
import { factsOf, limitOf, readingOf, toolOf, valves } from '#tests/kit/bench-facts.ts';
import { lacks } from '#tests/kit/programs.ts';
import { askPython } from '#tests/kit/python.ts';

type Read = Record<string, string>;

const tool = toolOf({ name: 'Micrometer "G03", 0-1', serial: '=7,1', uncertainty: 2540 });
const spot = id<'spot'>(1);
const facts = factsOf({
  spots: valves('1E', '1I'),
  tools: [tool],
  limits: [
    limitOf('guide-clearance', 'in', { low: '.0015', high: '.0040', sourceWords: 'Blatt 3, „Führung“\nZeile 2' }),
    limitOf('recession', 'mm', { low: '-0.30', high: '0.90' }),
  ],
  readings: [
    ...['top', 'mid', 'bot'].map((point) => readingOf('guide-id', '.3441', 'in', { spot, point, tool: tool.id })),
    readingOf('stem', '.3412', 'in', { spot, tool: tool.id }),
    readingOf('recession', '-0.15', 'mm', { spot, note: '@home, „tief“\r\nzweite Zeile' }),
    readingOf('crack-map', '-- from 3E2, "hairline"', null, { note: 'Łukasz Ωμέγα 溝' }),
  ],
});
const row = (quantity: string, point: string | null = null) =>
  ({ quantity, point, stage: 'after', shown: true }) as const;
const tables = [
  {
    code: 'guides',
    words: 'Guides',
    castingKind: 'head',
    spotKind: 'valve',
    operation: null,
    rows: [row('guide-id', 'top'), row('stem'), row('guide-clearance'), row('recession')],
  },
] as const;

const fileOf = (facts: Facts): ReadingsExport => ({
  format: 'benchtag-readings',
  version: 1,
  made: '2026-03-09T14:00:00.000Z',
  casting: {
    tag: 41170,
    ticket: 20417,
    castingNumber: '4B?71-L',
    words: 'a head',
    kind: 'head',
    material: 'iron_grey',
    position: 'single',
    guardBand: false,
    certified: false,
    customer: 'Ærø, "Ørsted" & Søn',
  },
  rows: exportRows(facts, tables, { ticket: 20417, castingNumber: '4B?71-L' }),
});
const file = fileOf(facts);

const READ_CSV = 'print(json.dumps(list(csv.DictReader(io.StringIO(text, newline=""), strict=True))))';

describe.skipIf(lacks('python3'))('csvOf', () => {
  const back = () => askPython<Read[]>(READ_CSV, csvOf(file));
  const at = (quantity: string, place = '1E') => back().find((it) => it.quantity === quantity && it.place === place);

  it('is read back by csv of the Python standard library: figures, units, limits, verdicts (RFC 4180)', () => {
    expect(at('stem')).toMatchObject({ typed: '.3412', value: '0.3412', unit: 'in', other_value: '8.666' });
    expect(at('guide-clearance')).toMatchObject({
      value: '0.0029',
      unit: 'in',
      measured: 'false',
      low: '0.0015',
      high: '0.0040',
      limit_unit: 'in',
      verdict: 'pass',
      base: '73660',
      base_unit: 'nm',
    });
    expect(at('stem', '1I')).toMatchObject({ status: 'not measured', value: '', verdict: 'not measured' });
  });

  it('keeps commas, quotes, ends of lines and letters of other scripts (RFC 4180)', () => {
    expect(at('guide-clearance')?.limit_source).toBe('Blatt 3, „Führung“\nZeile 2');
    expect(at('stem')?.gauge).toBe('Micrometer "G03", 0-1');
    expect(back().find((it) => it.quantity === 'crack-map')?.marks).toBe('Łukasz Ωμέγα 溝');
  });

  it('ends each line with CR LF and has as many cells in each as there are names (RFC 4180)', () => {
    const text = csvOf(file);
    const widths = askPython<number[]>(
      'print(json.dumps([len(r) for r in csv.reader(io.StringIO(text, newline=""))]))',
      text,
    );

    expect(text.endsWith('\r\n')).toBe(true);
    expect(new Set(widths).size).toBe(1);
    expect(widths).toHaveLength(file.rows.length + 1);
  });

  it('puts an apostrophe before words that begin like a formula, never before a figure (common practice, no source)', () => {
    expect(at('recession')).toMatchObject({ typed: '-0.15', value: '-0.15', low: '-0.30' });
    expect(at('recession')?.marks).toBe("'@home, „tief“\r\nzweite Zeile");
    expect(at('stem')?.gauge_serial).toBe("'=7,1");
    expect(back().find((it) => it.quantity === 'crack-map')?.said).toBe('\'-- from 3E2, "hairline"');
  });

  it('gives each length as the same whole number that Python works out from its text (exact mathematics)', () => {
    const script = [
      'per = {"in": 25400000, "mm": 1000000}',
      'rows = [r for r in csv.DictReader(io.StringIO(text, newline="")) if r["unit"] in per]',
      'print(json.dumps([[r["quantity"], str(fractions.Fraction(r["value"]) * per[r["unit"]]), r["base"]] for r in rows]))',
    ].join('\n');
    const figures = askPython<[string, string, string][]>(script, csvOf(file));

    expect(figures.length).toBeGreaterThan(3);
    for (const [quantity, worked, kept] of figures) expect([quantity, worked]).toEqual([quantity, kept]);
  });
});

describe.skipIf(lacks('python3'))('jsonOf', () => {
  const back = () =>
    askPython<{ version: number; casting: Read; rows: Record<string, unknown>[] }>(
      'print(json.dumps(json.loads(text)))',
      jsonOf(file),
    );

  it('is read back by json of the Python standard library with its version and the names as they are', () => {
    const read = back();

    expect(read.version).toBe(1);
    expect(read.casting.customer).toBe('Ærø, "Ørsted" & Søn');
    expect(read.rows).toHaveLength(file.rows.length);
    expect(read.rows.find((it) => it.quantity === 'recession')).toMatchObject({
      value: '-0.15',
      low: '-0.30',
      high: '0.90',
      limit_unit: 'mm',
      verdict: 'pass',
      marks: ['@home, „tief“\r\nzweite Zeile'],
    });
  });

  it('says the same as the CSV in every column', () => {
    const plain = (field: unknown) =>
      Array.isArray(field) ? field.join('; ') : field === null || field === undefined ? '' : String(field);
    const csv = askPython<Read[]>(READ_CSV, csvOf(file));
    const json = back().rows;

    for (const [index, row] of csv.entries()) {
      for (const [name, text] of Object.entries(row)) {
        expect([name, text.replace(/^'/, '')]).toEqual([name, plain(json[index]?.[name])]);
      }
    }
  });
});
