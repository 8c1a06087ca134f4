import { describe, expect, it } from 'vitest';
import { drawBuildSheet } from '#core/sheets/build-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts, pagesOf, textOf } from '#tests/kit/pdf.ts';
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
