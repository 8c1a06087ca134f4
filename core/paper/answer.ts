/** The strip in which the shop writes down an answer given by telephone or message. */
import { type Block, beside, box, RULES, stack } from './block.ts';
import { blank } from './marks.ts';
import { type Ink, STYLES } from './styles.ts';
import { widthOfText } from './text.ts';

/** Who, from which number, when, in which words. */
export function answerStrip(ink: Ink, width: number): Block {
  const inner = width - 20;
  const line = (inner - 146) / 3;
  const told = 'Answered by phone or message, filled in by the shop: words';
  const words = stack(
    [
      blank(ink, told, inner - widthOfText(ink, told, STYLES.body) - 4),
      beside([blank(ink, 'who', line), blank(ink, 'number', line), blank(ink, 'when', line)], 14),
    ],
    4,
  );
  return box(ink, words, { padX: 10, padY: 4, weight: RULES.thin, width });
}
