/**
 * The six faces of Benchtag's paper, opened once.
 *
 * Opening a face costs some hundred milliseconds, so it is done when the drawing thread starts and never again. Figures of
 * these faces differ in width unless `tnum` is switched on; every measure and every stroke of text goes through here, so it
 * is on everywhere.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create, type Font } from 'fontkit';

const FACES = {
  text: 'SofiaSans-Regular.ttf',
  textSemi: 'SofiaSans-SemiBold.ttf',
  textBold: 'SofiaSans-Bold.ttf',
  figure: 'SofiaSansCondensed-Regular.ttf',
  figureSemi: 'SofiaSansCondensed-SemiBold.ttf',
  figureBold: 'SofiaSansCondensed-Bold.ttf',
} as const;

/** `text` is for words, `figure` (condensed) for figures, tags and column heads. */
export type FaceName = keyof typeof FACES;
export const FACE_NAMES = Object.keys(FACES) as FaceName[];

/** Equal widths of figures. */
export const FEATURES: 'tnum'[] = ['tnum'];

/** Width of the box drawn for a character the faces lack, in em. */
export const MISSING_WIDTH = 0.62;

export type Face = Readonly<{
  name: FaceName;
  font: Font;
  /** Above the base line, in em. */
  ascent: number;
  /** Below the base line, in em, positive. */
  descent: number;
  has(codePoint: number): boolean;
  /** Width in em of text whose characters the face has. */
  widthOf(text: string): number;
}>;
export type Fonts = Readonly<Record<FaceName, Face>>;

/** Words measured before are remembered; past this many the memory starts anew. */
const MOST_REMEMBERED = 20_000;

function openFace(folder: string, name: FaceName): Face {
  const font = create(readFileSync(join(folder, FACES[name])));
  if (!('hasGlyphForCodePoint' in font)) throw new Error(`${FACES[name]} holds several fonts; one is wanted`);
  const widths = new Map<string, number>();
  return {
    name,
    font,
    ascent: font.ascent / font.unitsPerEm,
    descent: -font.descent / font.unitsPerEm,
    has: (codePoint) => font.hasGlyphForCodePoint(codePoint),
    widthOf(text) {
      const known = widths.get(text);
      if (known !== undefined) return known;
      const width = font.layout(text, FEATURES).advanceWidth / font.unitsPerEm;
      if (widths.size >= MOST_REMEMBERED) widths.clear();
      widths.set(text, width);
      return width;
    },
  };
}

/**
 * Open all faces.
 *
 * @param folder `assets/fonts`
 * @throws when a file is missing or no font
 */
export function openFonts(folder: string): Fonts {
  return Object.fromEntries(FACE_NAMES.map((name) => [name, openFace(folder, name)])) as Fonts;
}
