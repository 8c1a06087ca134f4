/** Parts that several sheets share: title block, headings, lists of facts, signatures. */
import { type Block, beside, box, RULES, stack, strokeLine, strokeRect, text } from './block.ts';
import type { Rich } from './lines.ts';
import { writeLine } from './marks.ts';
import { leave, need, type Pen, place, widthOf } from './pen.ts';
import { picture } from './picture.ts';
import { type Ink, STYLES, type Style } from './styles.ts';

export type Fact = Readonly<{
  label: string;
  value: Rich;
  /** Share of the width; 1 when left out. */
  share?: number;
  style?: Style;
  /** Stands before the value, for example a tag. */
  lead?: (ink: Ink) => Block;
}>;

/** Compartments with a small label over a value, as on a shop drawing. */
export function titleBlock(ink: Ink, facts: readonly Fact[], width: number, weight: number = RULES.strong): Block {
  const shares = facts.reduce((sum, fact) => sum + (fact.share ?? 1), 0);
  const cells = facts.map((fact) => factBlock(ink, fact, (width * (fact.share ?? 1)) / shares));
  const height = Math.max(...cells.map((cell) => cell.height));
  return {
    width,
    height,
    draw(x, y) {
      let at = x;
      for (const [index, cell] of cells.entries()) {
        cell.draw(at, y);
        at += cell.width;
        if (index < cells.length - 1) strokeLine(ink, at, y, at, y + height, RULES.thin);
      }
      strokeRect(ink, x, y, width, height, weight);
    },
  };
}

function factBlock(ink: Ink, fact: Fact, width: number): Block {
  const lead = fact.lead?.(ink);
  const inner = width - 12;
  const value = text(ink, fact.value, fact.style ?? STYLES.value, lead ? inner - lead.width - 4 : inner);
  const shown = lead ? beside([lead, value], 4) : value;
  return box(ink, stack([text(ink, fact.label, STYLES.label, inner), shown]), { padX: 6, padY: 3, width });
}

/** A heading that never stands alone at a foot: `below` more points must fit under it. */
export function heading(pen: Pen, words: Rich, below = 30): void {
  leave(pen, 4);
  const block = text(pen, words, STYLES.heading, widthOf(pen));
  need(pen, block.height + below);
  place(pen, block, 2);
}

/** A paragraph; a long one runs on over pages. */
export function paragraph(pen: Pen, words: Rich, style: Style = STYLES.body, after = 4): void {
  if (words === '' || words.length === 0) return;
  place(pen, text(pen, words, style, widthOf(pen)), after, true);
}

/** A paragraph under a thin rule. */
export function ruledParagraph(pen: Pen, words: Rich, style: Style = STYLES.small): void {
  const block = text(pen, words, style, widthOf(pen));
  need(pen, Math.min(block.height, 40) + 6);
  strokeLine(pen, pen.left, pen.y, pen.right, pen.y, RULES.thin);
  pen.y += 4;
  place(pen, block, 2, true);
}

export type SignatureLine = Readonly<{
  label: Rich;
  share?: number;
  written?: Rich | undefined;
  /** The signature as it was drawn on the glass: JPEG or PNG in base 64. */
  drawn?: string | undefined;
}>;

/** The place of a drawn signature, four times as wide as high like the glass it was drawn on. */
const SIGNED = { width: 136, height: 34 };

/** Lines to sign on, side by side. */
export function signatures(pen: Pen, lines: readonly SignatureLine[], before = 10): void {
  const gap = 18;
  const shares = lines.reduce((sum, line) => sum + (line.share ?? 1), 0);
  const width = widthOf(pen) - gap * (lines.length - 1);
  // One signature drawn, and every line beside it stands as low.
  const room = lines.some(({ drawn }) => drawn) ? SIGNED.height : 16;
  const blocks = lines.map(({ label, share = 1, written, drawn }) => {
    const signed = drawn ? picture(pen, drawn, SIGNED.width, SIGNED.height, { valign: 'bottom' }) : undefined;
    return writeLine(pen, label, (width * share) / shares, { words: written, drawn: signed, room });
  });
  const row = beside(blocks, gap, 'top');
  need(pen, row.height + before);
  leave(pen, before);
  place(pen, row, 6);
}

/** A framed box round words, for example the promise. */
export function framed(ink: Ink, inner: Block, width: number, weight: number = RULES.heavy): Block {
  return box(ink, inner, { padX: 8, padY: 5, weight, width });
}

/** A heading with a tag before it; never alone at a foot. */
export function headed(pen: Pen, words: Rich, lead?: (ink: Ink) => Block): void {
  leave(pen, 4);
  const before = lead?.(pen);
  const width = widthOf(pen) - (before ? before.width + 6 : 0);
  const label = text(pen, words, STYLES.heading, width);
  const block = before ? beside([before, label], 6, 'middle') : label;
  need(pen, block.height + 60);
  place(pen, block, 2);
}
