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

/**
 * Scripts whose letters share outlines (Latin P and Cyrillic R are one glyph). Each script of a face is embedded as a font of
 * its own, so that a name read or searched in the file has its own letters and not another script's.
 */
export const SCRIPTS = ['latin', 'cyrillic', 'greek'] as const;
export type Script = (typeof SCRIPTS)[number];

/** The script of a word; figures and signs count as Latin. */
export function scriptOf(word: string): Script {
  if (/\p{Script=Cyrillic}/u.test(word)) return 'cyrillic';
  return /\p{Script=Greek}/u.test(word) ? 'greek' : 'latin';
}

export type Face = Readonly<{
  name: FaceName;
  /** One opened font for each script. */
  fonts: Readonly<Record<Script, Font>>;
  /** Above the base line, in em. */
  ascent: number;
  /** Below the base line, in em, positive. */
  descent: number;
  has(codePoint: number): boolean;
  /** Width in em of text whose characters the face has. */
  widthOf(text: string): number;
  /** Forget which character a glyph was first used for, so that one document leaves no trace in the next. */
  forget(): void;
}>;
export type Fonts = Readonly<Record<FaceName, Face>>;

/** Words measured before are remembered; past this many the memory starts anew. */
const MOST_REMEMBERED = 20_000;

/** The same font with its own memory of glyphs and its own name. It must be made before the font is first used. */
function ownMemory(font: Font, script: string): Font {
  const own = { _glyphs: { value: {}, writable: true }, postscriptName: { value: `${font.postscriptName}-${script}` } };
  return Object.create(font, own) as Font;
}

function openFace(folder: string, name: FaceName): Face {
  const font = create(readFileSync(join(folder, FACES[name])));
  if (!('hasGlyphForCodePoint' in font)) throw new Error(`${FACES[name]} holds several fonts; one is wanted`);
  const fonts = Object.fromEntries(SCRIPTS.map((script) => [script, ownMemory(font, script)])) as Face['fonts'];
  // Measuring has a memory of its own: what was measured before must not show in what is drawn.
  const measured = ownMemory(font, 'measured');
  const widths = new Map<string, number>();
  return {
    name,
    fonts,
    ascent: font.ascent / font.unitsPerEm,
    descent: -font.descent / font.unitsPerEm,
    has: (codePoint) => measured.hasGlyphForCodePoint(codePoint),
    widthOf(text) {
      const known = widths.get(text);
      if (known !== undefined) return known;
      const width = measured.layout(text, FEATURES).advanceWidth / font.unitsPerEm;
      if (widths.size >= MOST_REMEMBERED) widths.clear();
      widths.set(text, width);
      return width;
    },
    forget() {
      for (const script of SCRIPTS) Object.assign(fonts[script], { _glyphs: {} });
    },
  };
}

/** Name under which a document knows a face in a script. */
export const fontName = (face: FaceName, script: Script): string => `${face}.${script}`;

/**
 * Open all faces.
 *
 * @param folder `assets/fonts`
 * @throws when a file is missing or no font
 */
export function openFonts(folder: string): Fonts {
  return Object.fromEntries(FACE_NAMES.map((name) => [name, openFace(folder, name)])) as Fonts;
}
