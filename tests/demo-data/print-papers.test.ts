/** Every paper of the practice shop, read back from its PDF. Figures: expected.json of the demo data (a regression baseline). */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import expected from '#demo-data/expected.json' with { type: 'json' };
import { makePracticeShop } from '#demo-data/practice-shop.ts';
import { printPapers } from '#demo-data/print-papers.ts';
import { openWorkspace, type Workspace } from '#electron/wiring/open-workspace.ts';
import { codesOf, faultsOf, pagesOf, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const grouped = (amount: string): string => amount.replace(/\B(?=(\d{3})+\.)/g, ',');

describe.skipIf(lacks('pdftotext', 'pdftoppm', 'zbarimg'))('printPapers', () => {
  // Of all tests here together: it takes some seconds to make.
  const folder = mkdtempSync(join(tmpdir(), 'benchtag-papers-'));
  const out = join(folder, 'papers');
  let workspace: Workspace;
  let printed: Awaited<ReturnType<typeof printPapers>>;
  const paper = (kind: string): Buffer =>
    readFileSync(join(out, printed.files.find((file) => file.startsWith(kind)) ?? kind));

  beforeAll(async () => {
    await makePracticeShop(join(folder, 'shop'));
    workspace = openWorkspace(join(folder, 'shop'));
    printed = await printPapers(workspace, out);
  }, 240_000);
  afterAll(async () => {
    await workspace.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('finds something to print of every kind, with telling names', () => {
    expect(printed.missing).toEqual([]);
    expect(printed.files).toHaveLength(12);
    expect(printed.files).toContain('claim-ticket-20455-r1.pdf');
    expect(printed.files).toContain('estimate-20455-E1-r1.pdf');
  });

  it('prints all of it as practice, and no word on another', { timeout: 60_000 }, () => {
    for (const file of printed.files) {
      const bytes = readFileSync(join(out, file));

      expect(textOf(bytes), file).toContain('PRACTICE');
      expect(faultsOf(bytes), file).toEqual([]);
    }
  });

  it('prints the invoice of S02 to the cent', () => {
    const { invoice } = expected.stories.S02;
    const pages = pagesOf(paper('invoice')).join(' ');

    for (const amount of [invoice.beforeTax, invoice.tax, invoice.total]) expect(pages).toContain(grouped(amount));
    expect(pages).toContain(`−${grouped(invoice.labourDiscount)}`);
  });

  it('prints the estimate of S02 to the cent', () => {
    const { estimate } = expected.stories.S02;

    expect(textOf(paper('estimate'))).toContain(`Total USD ${grouped(estimate.total)}`);
  });

  it('prints the heights and shims of the left head of S02 in bench order', () => {
    const { valves } = expected.stories.S02.shimsLeft;
    const page = pagesOf(paper('build-sheet'))[0] ?? '';

    expect(page).toContain(valves.map(({ measured }) => measured).join(' '));
    expect(page).toContain(valves.map(({ final }) => final).join(' '));
  });

  it('prints what each way of added work costs', () => {
    const option = expected.stories.S02.addedWork.options[0];

    expect(textOf(paper('added-work'))).toContain(`Extra ${option?.price}`);
  });

  it('prints a receipt for the payment of S01', () => {
    expect(textOf(paper('receipt'))).toContain(expected.stories.S01.invoice.total);
  });

  it('prints codes that read back to the numbers beside them', { timeout: 60_000 }, () => {
    expect(codesOf(paper('claim-ticket'), 1)).toEqual([['BT T20455']]);
    expect(codesOf(paper('traveller'), 1)).toEqual([['BT C41234']]);
    expect(codesOf(paper('casting-tag')).flat()).toEqual(expect.arrayContaining(['BT C41234', 'BT C41235']));
  });
});
