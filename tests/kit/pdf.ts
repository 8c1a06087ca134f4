/** Reads a PDF with programs that are not ours: pdftotext and pdffonts of Poppler, zbarimg. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openFonts } from '#core/paper/fonts.ts';

/** The six faces, opened once for all tests of papers. */
export const fonts = openFonts(new URL('../../assets/fonts', import.meta.url).pathname);

function inFolder<T>(bytes: Uint8Array, work: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'benchtag-pdf-'));
  try {
    const file = join(folder, 'paper.pdf');
    writeFileSync(file, bytes);
    return work(file, folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const run = (program: string, args: readonly string[]): string =>
  execFileSync(program, args, { encoding: 'utf8', maxBuffer: 1e8, stdio: ['ignore', 'pipe', 'ignore'] });

/** The text of each page, words separated by one space. */
export const pagesOf = (bytes: Uint8Array): string[] =>
  inFolder(bytes, (file) => run('pdftotext', ['-layout', file, '-']))
    .split('\f')
    .slice(0, -1)
    .map((page) => page.replace(/\s+/g, ' ').trim());

/** All text in the order in which it was drawn, words separated by one space. */
export const textOf = (bytes: Uint8Array): string =>
  inFolder(bytes, (file) => run('pdftotext', ['-raw', file, '-']))
    .replace(/\s+/g, ' ')
    .trim();

export type WordBox = Readonly<{
  page: number;
  word: string;
  left: number;
  top: number;
  right: number;
  bottom: number;
}>;
export type PageBox = Readonly<{ width: number; height: number }>;

/** Every word with its box in points from the upper left corner, and the size of each page. */
export function boxesOf(bytes: Uint8Array): { pages: PageBox[]; words: WordBox[] } {
  const html = inFolder(bytes, (file) => run('pdftotext', ['-bbox', file, '-']));
  const pages: PageBox[] = [];
  const words: WordBox[] = [];
  for (const line of html.split('\n')) {
    const page = /<page width="([\d.]+)" height="([\d.]+)">/.exec(line);
    if (page) pages.push({ width: Number(page[1]), height: Number(page[2]) });
    const word = /<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">(.*)<\/word>/.exec(
      line,
    );
    if (word) {
      const [left, top, right, bottom] = word.slice(1, 5).map(Number) as [number, number, number, number];
      words.push({ page: pages.length, word: word[5] ?? '', left, top, right, bottom });
    }
  }
  return { pages, words };
}

/**
 * Pairs of words that stand on each other, and words within 5 mm of the paper's edge; empty for a clean paper.
 *
 * A word's box is as high as the face's whole line; letters fill its middle, so the middle half is compared.
 */
export function faultsOf(bytes: Uint8Array): string[] {
  const { pages, words } = boxesOf(bytes);
  const edge = (5 / 25.4) * 72;
  const outside = words
    .filter(({ page, left, right, top, bottom }) => {
      const size = pages[page - 1];
      const [inkTop, inkBottom] = [top + (bottom - top) * 0.2, bottom - (bottom - top) * 0.25];
      return !size || left < edge || right > size.width - edge || inkTop < edge || inkBottom > size.height - edge;
    })
    .map(({ page, word }) => `page ${page}: "${word}" is too near the edge`);
  return [...outside, ...overlapsOf(words)];
}

function overlapsOf(words: readonly WordBox[]): string[] {
  const found: string[] = [];
  const middle = ({ top, bottom }: WordBox) => [top + (bottom - top) * 0.3, bottom - (bottom - top) * 0.3] as const;
  for (const [index, a] of words.entries()) {
    for (const b of words.slice(index + 1)) {
      if (a.page !== b.page || a.left >= b.right - 0.5 || b.left >= a.right - 0.5) continue;
      const [[topA, bottomA], [topB, bottomB]] = [middle(a), middle(b)];
      if (topA < bottomB && topB < bottomA) found.push(`page ${a.page}: "${a.word}" stands on "${b.word}"`);
    }
  }
  return found;
}

/** What the codes of each page (or of the first `most`) say, as zbarimg reads them off a 150 dpi picture; sorted within a page. */
export const codesOf = (bytes: Uint8Array, most = 1000): string[][] =>
  inFolder(bytes, (file, folder) => {
    run('pdftoppm', ['-r', '150', '-l', String(most), '-gray', '-png', file, join(folder, 'page')]);
    return readdirSync(folder)
      .filter((name) => name.endsWith('.png'))
      .sort()
      .map((name) => readCodes(join(folder, name)));
  });

function readCodes(picture: string): string[] {
  try {
    return run('zbarimg', ['-q', '--raw', picture]).split('\n').filter(Boolean).sort();
  } catch {
    // zbarimg ends with 4 when it finds no code at all.
    return [];
  }
}

/** How many pictures a file carries. */
export const picturesIn = (bytes: Uint8Array): number =>
  Buffer.from(bytes)
    .toString('latin1')
    .split(/\/Subtype \/Image\b/).length - 1;

/** A picture of one grey point, PNG in base 64. */
export const ONE_POINT =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

/** Lines of pdffonts: name, whether embedded, subset, with a table of characters. */
export const fontsOf = (bytes: Uint8Array): { name: string; embedded: boolean; readable: boolean }[] =>
  inFolder(bytes, (file) => run('pdffonts', [file]))
    .split('\n')
    .slice(2)
    .filter(Boolean)
    .map((line) => {
      const [embedded, , readable] = line.slice(-30).match(/yes|no/g) ?? [];
      return { name: line.split(/\s+/)[0] ?? '', embedded: embedded === 'yes', readable: readable === 'yes' };
    });
