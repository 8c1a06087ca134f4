import { describe, expect, it } from 'vitest';
import { drawBuildSheet } from '#core/sheets/build-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { faultsOf, fonts, pagesOf, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['build-sheet'];
const draw = (changes: Partial<Paper> = {}) => drawBuildSheet(fonts, { ...papers['build-sheet'], ...changes });

describe.skipIf(lacks('pdftotext'))('drawBuildSheet', () => {
  it('shows as found beside after for every valve, with the limit', async () => {
    const page = pagesOf(await draw())[0] ?? '';

    // S01 of the demo data: found, shims, height with shims.
    expect(page).toContain('1.518 1.503 1.506 1.531 1.529 1.497 1.512 1.544');
    expect(page).toContain('.015 0 0 .030 .030 0 .015 .045');
    expect(page).toContain('1.503 1.503 1.506 1.501 1.499 1.497 1.497 1.499');
    expect(page).toContain('1.490 – 1.510');
  });

  it('says what is left to cut, what we did not do, what was measured with, and who signed', async () => {
    const text = textOf(await draw());

    expect(text).toContain('Left above the minimum 0.013 in 0.33 mm');
    expect(text).toContain('Lash, piston to valve, cam timing');
    expect(text).toContain('Height micrometer G03');
    expect(text).toContain('Dervla Kestane, Tue 2 Mar 15:40');
    expect(text).toContain('must check every fit before use');
  });

  it('prints a face in figures with what its straightedge showed', async () => {
    const text = textOf(await draw());

    expect(text).toContain('Deck, as found');
    expect(text).toContain('0.003 in, middle');
    expect(text).toContain('least squares 0.0034 in');
  });

  it('says its rule and each gauge with number and check days when it is certified', async () => {
    const gauge = {
      name: 'G05',
      kind: 'bore gauge',
      serial: '7-114',
      doubt: '±0.0002 in',
      checked: 'checked Wed 3 Feb 2027',
      due: 'next Wed 1 Sep 2027',
    };
    const bytes = await draw({ guard: 'A figure passes only if', certified: { gauges: [gauge] } });
    const text = textOf(bytes);

    expect(text).toContain('Certified build sheet 20417');
    expect(text).toContain('Certified. A figure passes only if');
    expect(text).toContain('G05 bore gauge 7-114 ±0.0002 in checked Wed 3 Feb 2027 next Wed 1 Sep 2027');
    expect(faultsOf(bytes)).toEqual([]);
  });

  it('certifies nothing by a gauge that nobody named', async () => {
    expect(textOf(await draw({ certified: { gauges: [] } }))).toContain('nothing here is certified by a gauge');
  });

  it('shows a replaced figure beside the one that stands, its letter free', async () => {
    const [first] = papers['build-sheet'].tables;
    const row = { label: 'Height', values: ['1.503', '1.506'], limit: '', struck: [null, '1.531 a'] };
    const groups = [{ title: '', spots: ['1E', '1I'] }];
    const tables = first
      ? [{ ...first, groups, rows: [row], notes: [{ label: 'a', words: '1I: drum misread.' }] }]
      : [];
    const bytes = await draw({ tables });

    expect(textOf(bytes)).toMatch(/1\.531 a 1\.506/);
    expect(textOf(bytes)).toContain('a 1I: drum misread.');
    expect(faultsOf(bytes)).toEqual([]);
  });

  it.each(['letter', 'a4'] as const)(
    'breaks 32 valves with 20 rows well over pages of %s, heads repeated',
    async (paper) => {
      const [first] = papers['build-sheet'].tables;
      const spots = (side: string) => Array.from({ length: 16 }, (_, n) => `${(n >> 1) + 1}${side}${(n % 2) + 1}`);
      const groups = [
        { title: 'Intake side', spots: spots('I') },
        { title: 'Exhaust side', spots: spots('E') },
      ];
      const rows = Array.from({ length: 20 }, (_, n) => ({
        label: `Quantity number ${n + 1}, mm`,
        stage: n % 2 === 0 ? 'found' : 'after',
        ...(n % 2 === 1 && { again: true }),
        values: Array.from({ length: 32 }, (_, v) => `${30 + n}.${10 + v}`),
        limit: '34.75 – 35.25',
        doubt: '±0.003',
        verdicts: Array.from({ length: 32 }, (_, v) => (v === 31 ? ('close' as const) : null)),
      }));
      const bytes = await draw({ head: havePaperHead({ paper }), tables: first ? [{ ...first, groups, rows }] : [] });
      const pages = pagesOf(bytes);

      for (const page of pages.slice(0, 2)) expect(page).toMatch(/Installed height.*(1I1|1E1)/);
      expect(pages.join(' ')).toContain('continued');
      for (const { values } of rows) expect(pages.join(' ')).toContain(values[31]);
      expect(faultsOf(bytes)).toEqual([]);
    },
  );

  it('puts the two sides of a head with more than sixteen valves one under the other', async () => {
    const spots = (side: string) => Array.from({ length: 12 }, (_, n) => `${(n >> 1) + 1}${side}${(n % 2) + 1}`);
    const values = Array.from({ length: 24 }, (_, n) => `41.${10 + n}`);
    const [first] = papers['build-sheet'].tables;
    const groups = [
      { title: 'Intake side', spots: spots('I') },
      { title: 'Exhaust side', spots: spots('E') },
    ];
    const tables = first ? [{ ...first, groups, rows: [{ label: 'Installed height', values, limit: '' }] }] : [];
    const page = pagesOf(await draw({ tables }))[0] ?? '';

    expect(page).toContain(values.slice(0, 12).join(' '));
    expect(page).toContain(values.slice(12).join(' '));
  });
});
