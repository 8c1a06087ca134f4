import { describe, expect, it } from 'vitest';
import { space } from '#core/paper/block.ts';
import { finishSheet, startSheet } from '#core/paper/page.ts';
import { type Pen, place } from '#core/paper/pen.ts';
import { type Table, table } from '#core/paper/table.ts';
import { havePaperHead } from '#tests/kit/papers.ts';
import { fonts, pagesOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const title = { title: 'List', number: '1', code: '' };

async function pagesWith(draw: (pen: Pen) => void): Promise<string[]> {
  const head = havePaperHead();
  const pen = startSheet(fonts, head, title);
  draw(pen);
  return pagesOf(await finishSheet(pen, head, title));
}

const columns: Table['columns'] = [
  { title: 'Word', width: { share: 1 } },
  { title: 'Figure', width: 80, align: 'end' },
];
const rowsOf = (count: number) =>
  Array.from({ length: count }, (_, n) => ({ cells: [`word ${n + 1}`, `${1000 + n}`] }));

describe.skipIf(lacks('pdftotext'))('table', () => {
  it('repeats its heading and heads on every page', async () => {
    const pages = await pagesWith((pen) => table(pen, { heading: 'Parts', columns, rows: rowsOf(90) }));

    expect(pages.length).toBeGreaterThan(1);
    expect(pages[0]).toContain('Parts Word Figure');
    for (const page of pages.slice(1)) expect(page).toContain('Parts, continued Word Figure');
    expect(pages.join(' ').match(/word \d+/g)).toHaveLength(90);
  });

  it('starts on the next page when only its head would fit', async () => {
    const pages = await pagesWith((pen) => {
      place(pen, space(pen.bottom - pen.y - 30));
      table(pen, { heading: 'Parts', columns, rows: rowsOf(3) });
    });

    expect(pages[0]).not.toContain('Parts');
    expect(pages[1]).toContain('Parts Word Figure');
  });

  it.each([40, 41, 42, 43, 44, 45, 46, 47, 48, 49])('keeps a total with its last two lines of %i', async (count) => {
    const total = { cells: ['Total', '99'], strong: true };
    const pages = await pagesWith((pen) => table(pen, { columns, rows: [...rowsOf(count), total], keepLast: 3 }));
    const last = pages.find((page) => page.includes('Total 99'));

    expect(last).toContain(`word ${count - 1} `);
    expect(last).toContain(`word ${count} `);
  });

  it('cuts a row that is taller than a page, line by line, losing nothing', async () => {
    const cell = Array.from({ length: 3000 }, (_, n) => `w${n}`).join(' ');
    const pages = await pagesWith((pen) => table(pen, { columns, rows: [{ cells: [cell, '1'] }] }));

    expect(pages.length).toBeGreaterThan(2);
    expect(pages.join(' ').match(/\bw\d+\b/g)).toHaveLength(3000);
  });
});
