/** Breaking words into lines without losing a letter. */
import { type FaceName, MISSING_WIDTH, type Script, scriptOf } from './fonts.ts';
import type { Ink, Style } from './styles.ts';

/** A part of a line in bold. */
export type Bold = Readonly<{ b: string }>;
/** Words with parts in bold. A line feed starts a new line; a no-break space keeps two words together. */
export type Rich = string | readonly (string | Bold)[];

/** A stretch of one face on one line; `missing` is drawn as a box because no face has the character. */
type Piece = { text: string; face: FaceName; script: Script; width: number; missing?: boolean };
export type Line = Readonly<{ pieces: readonly Piece[]; width: number }>;

/** Control and format characters: they draw nothing and have no glyph. */
const INVISIBLE = /(?!\n)[\p{Cc}\p{Cf}]|\ufe0e|\ufe0f/gu;
const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

const clean = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/\r\n?|[\u2028\u2029]/g, '\n')
    .replace(/\t/g, ' ')
    .replace(INVISIBLE, '');
const isBlank = (text: string): boolean => text.trim() === '' && !text.includes('\u00a0');

function widthOf(ink: Ink, text: string, face: FaceName, style: Style): number {
  const letters = style.spacing ? Array.from(text).length : 0;
  return ink.fonts[face].widthOf(text) * style.size + letters * (style.spacing ?? 0) * style.size;
}

/** Cut a word where the face lacks a character; each such character (with its marks) becomes one box. */
function piecesOf(ink: Ink, word: string, face: FaceName, style: Style): Piece[] {
  const has = (text: string) => Array.from(text).every((letter) => ink.fonts[face].has(letter.codePointAt(0) ?? 0));
  const script = scriptOf(word);
  if (has(word)) return [{ text: word, face, script, width: widthOf(ink, word, face, style) }];
  const pieces: Piece[] = [];
  for (const { segment } of segmenter.segment(word)) {
    const last = pieces.at(-1);
    if (!has(segment)) pieces.push({ text: segment, face, script, width: MISSING_WIDTH * style.size, missing: true });
    else if (last && !last.missing) last.text += segment;
    else pieces.push({ text: segment, face, script, width: 0 });
  }
  for (const piece of pieces) if (!piece.missing) piece.width = widthOf(ink, piece.text, face, style);
  return pieces;
}

type Word = { pieces: Piece[]; width: number; blank: boolean; feed: boolean };

const wordOf = (pieces: Piece[], blank = false): Word => ({
  pieces,
  blank,
  feed: false,
  width: pieces.reduce((sum, piece) => sum + piece.width, 0),
});

/** Words and the spaces between them; runs that touch without a space stay one word. */
function wordsOf(ink: Ink, rich: Rich, style: Style): Word[] {
  const found: Word[] = [];
  for (const run of typeof rich === 'string' ? [rich] : rich) {
    const bold = typeof run !== 'string';
    const face = bold ? style.bold : style.face;
    for (const part of clean(bold ? run.b : run).split(/(\n|[ ]+)/))
      addPart(found, part, (words) => piecesOf(ink, words, face, style));
  }
  return found;
}

function addPart(found: Word[], part: string, cut: (words: string) => Piece[]): void {
  if (part === '') return;
  if (part === '\n') {
    found.push({ pieces: [], width: 0, blank: true, feed: true });
    return;
  }
  const word = wordOf(cut(part), isBlank(part));
  const last = found.at(-1);
  if (last && !last.blank && !word.blank) {
    last.pieces.push(...word.pieces);
    last.width += word.width;
  } else found.push(word);
}

/** A word wider than the line, cut into parts that fit; every letter is kept. */
function cutWord(ink: Ink, word: Word, width: number, style: Style): Word[] {
  const parts: Word[] = [];
  let current: Piece[] = [];
  let used = 0;
  for (const piece of word.pieces) {
    const letters = piece.missing ? [piece.text] : Array.from(segmenter.segment(piece.text), ({ segment }) => segment);
    for (const letter of letters) {
      const letterWidth = piece.missing ? piece.width : widthOf(ink, letter, piece.face, style);
      if (used + letterWidth > width && current.length > 0) {
        parts.push(wordOf(current));
        current = [];
        used = 0;
      }
      current.push({ ...piece, text: letter, width: letterWidth });
      used += letterWidth;
    }
  }
  if (current.length > 0) parts.push(wordOf(current));
  return parts;
}

/** Join neighbouring pieces of one face, so that each is drawn with one stroke and its letters fit each other. */
function joinPieces(ink: Ink, pieces: readonly Piece[], style: Style): Line {
  const joined: Piece[] = [];
  for (const piece of pieces) {
    const last = joined.at(-1);
    if (last && last.face === piece.face && last.script === piece.script && !last.missing && !piece.missing)
      last.text += piece.text;
    else joined.push({ ...piece });
  }
  for (const piece of joined) if (!piece.missing) piece.width = widthOf(ink, piece.text, piece.face, style);
  return { pieces: joined, width: joined.reduce((sum, piece) => sum + piece.width, 0) };
}

/**
 * Break words into lines no wider than `width`.
 *
 * @param indent taken off the first line (something else stands there)
 * @returns at least one line; an empty text gives one empty line
 */
export function breakLines(ink: Ink, rich: Rich, style: Style, width: number, indent = 0): Line[] {
  const filler = new LineFiller(ink, style, width, indent);
  for (const word of wordsOf(ink, rich, style)) filler.add(word);
  return filler.finish();
}

/** Fills line after line. */
class LineFiller {
  readonly #ink: Ink;
  readonly #style: Style;
  readonly #width: number;
  readonly #indent: number;
  readonly #lines: Line[] = [];
  #pieces: Piece[] = [];
  #used = 0;

  constructor(ink: Ink, style: Style, width: number, indent: number) {
    this.#ink = ink;
    this.#style = style;
    this.#width = width;
    this.#indent = indent;
  }

  add(word: Word): void {
    if (word.feed) this.#feed();
    else if (word.blank) {
      if (this.#pieces.length > 0) this.#put(word);
    } else if (this.#used + word.width <= this.#room()) this.#put(word);
    else this.#addToNextLine(word);
  }

  finish(): Line[] {
    this.#feed();
    return this.#lines;
  }

  #addToNextLine(word: Word): void {
    if (this.#pieces.length > 0) this.#feed();
    const parts = word.width <= this.#room() ? [word] : cutWord(this.#ink, word, this.#room(), this.#style);
    for (const [index, part] of parts.entries()) {
      if (index > 0) this.#feed();
      this.#put(part);
    }
  }

  /** The hundredth of a point keeps a text that was measured to fit from breaking. */
  #room(): number {
    return this.#width - (this.#lines.length === 0 ? this.#indent : 0) + 0.01;
  }

  #put(word: Word): void {
    this.#pieces.push(...word.pieces);
    this.#used += word.width;
  }

  #feed(): void {
    while (this.#pieces.length > 0 && isBlank(this.#pieces.at(-1)?.text ?? '')) this.#pieces.pop();
    this.#lines.push(joinPieces(this.#ink, this.#pieces, this.#style));
    this.#pieces = [];
    this.#used = 0;
  }
}
