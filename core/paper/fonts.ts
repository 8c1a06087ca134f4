/**
 * The six faces of Benchtag's paper, opened once.
 *
 * Opening a face costs some hundred milliseconds, so it is done when the drawing thread starts and never again. Figures of
 * these faces differ in width unless `tnum` is switched on; every measure and every stroke of text goes through here, so it
 * is on everywhere.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create, type Font, type GlyphRun } from 'fontkit';

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
}>;
export type Fonts = Readonly<Record<FaceName, Face>>;

/** Words measured before are remembered; past this many the memory starts anew. */
const MOST_REMEMBERED = 10_000;

/**
 * The same font with its own name and its own memory of laid out lines. It must be made before the font is first used.
 *
 * The font remembers for each glyph the character it was first laid out for; that is forgotten before every new line, so
 * what a line says depends on the line alone and a remembered line may serve every later document.
 */
function ownMemory(font: Font, script: string): Font {
  const lines = new Map<string, GlyphRun>();
  const own: Font = Object.create(font, {
    _glyphs: { value: {}, writable: true },
    postscriptName: { value: `${font.postscriptName}-${script}` },
    layout: {
      value: (line: string) => {
        const known = lines.get(line);
        if (known) return known;
        Object.assign(own, { _glyphs: {} });
        const run = font.layout.call(own, line, FEATURES);
        if (lines.size >= MOST_REMEMBERED) lines.clear();
        lines.set(line, run);
        return run;
      },
    },
  });
  return own;
}

function openFace(folder: string, name: FaceName): Face {
  const font = create(readFileSync(join(folder, FACES[name])));
  if (!('hasGlyphForCodePoint' in font)) throw new Error(`${FACES[name]} holds several fonts; one is wanted`);
  const fonts = Object.fromEntries(SCRIPTS.map((script) => [script, ownMemory(font, script)])) as Face['fonts'];
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
