/** The strip in which the shop writes down an answer given by telephone or message. */
import { type Block, beside, box, RULES, stack, text } from './block.ts';
import { blank } from './marks.ts';
import { type Ink, STYLES } from './styles.ts';

/** Who, from which number, when, in which words. */
export function answerStrip(ink: Ink, width: number): Block {
  const inner = width - 20;
  const line = (inner - 150) / 3;
  const words = stack(
    [
      text(ink, 'Answered by phone or message, filled in by the shop:', STYLES.body, inner),
      beside([blank(ink, 'who', line), blank(ink, 'number', line), blank(ink, 'when', line)], 14),
      blank(ink, 'words', inner - 40),
    ],
    5,
  );
  return box(ink, words, { padX: 10, padY: 6, weight: RULES.thin, width });
}
