/** Every style of type on paper, and where ink goes. Sizes in points. */
import type { FaceName, Fonts } from './fonts.ts';

/** Where ink goes: the document and the faces. */
export type Ink = Readonly<{ doc: PDFKit.PDFDocument; fonts: Fonts }>;

export type Style = Readonly<{
  face: FaceName;
  /** Face of bold runs. */
  bold: FaceName;
  size: number;
  /** Line height as a multiple of the size. */
  lead: number;
  /** Extra space after each letter, in em. */
  spacing?: number;
  ink?: 'white';
}>;

/** Nothing on paper is smaller than this. */
export const LEAST_SIZE = 8.5;

const words = { face: 'text', bold: 'textBold' } as const;
const strong = { face: 'textBold', bold: 'textBold' } as const;
const figures = { face: 'figure', bold: 'figureBold' } as const;
const strongFigures = { face: 'figureBold', bold: 'figureBold' } as const;

/** Every size of type on paper. */
export const STYLES = {
  small: { ...words, size: 8.5, lead: 1.3 },
  label: { ...words, size: 8.5, lead: 1.2 },
  column: { face: 'textSemi', bold: 'textBold', size: 8.5, lead: 1.2 },
  body: { ...words, size: 9.5, lead: 1.3 },
  strong: { ...strong, size: 9.5, lead: 1.3 },
  value: { ...words, size: 10.5, lead: 1.25 },
  heading: { ...strong, size: 11.5, lead: 1.2 },
  lead: { ...words, size: 14, lead: 1.3 },
  option: { ...strong, size: 13, lead: 1.2 },
  shop: { ...strong, size: 17, lead: 1.1 },
  title: { ...words, size: 10, lead: 1.3 },
  figure: { ...figures, size: 10.5, lead: 1.24 },
  strongFigure: { ...strongFigures, size: 10.5, lead: 1.24 },
  sum: { ...words, size: 11, lead: 1.3 },
  sumFigure: { ...figures, size: 11, lead: 1.3 },
  owed: { ...strong, size: 15, lead: 1.35 },
  owedFigure: { ...strongFigures, size: 20, lead: 1.05 },
  amount: { ...strongFigures, size: 15, lead: 1.1 },
  ceilingValue: { ...words, size: 10.5, lead: 1.25 },
  promise: { ...strongFigures, size: 19, lead: 1.1 },
  number: { ...strongFigures, size: 34, lead: 0.95, spacing: -0.03 },
  bar: { ...strongFigures, size: 11.5, lead: 1.2, spacing: 0.05, ink: 'white' },
  hugeBar: { ...strongFigures, size: 24, lead: 1.2, spacing: 0.05, ink: 'white' },
} as const satisfies Record<string, Style>;
