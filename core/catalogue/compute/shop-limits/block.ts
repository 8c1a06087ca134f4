/** What a shop judges a block by, and the figures it bores and hones with, where nothing better is known. */
import { limit, type ShopLimit, usually } from '../shop-limit.ts';

/** Common practice as a public text has it. */
const printed = (it: ShopLimit, where: string): ShopLimit => ({
  ...it,
  sourceWords: `shop default, common practice; ${where}`,
});

export const BLOCK_LIMITS: readonly ShopLimit[] = [
  // Older petrol engines; newer ones and marine diesels want less.
  limit('bore-taper', 'before', null, '0.005', 'in'),
  limit('bore-out-of-round', 'before', null, '0.005', 'in'),
  limit('bore-taper', 'after', null, '0.0005', 'in'),
  limit('bore-out-of-round', 'after', null, '0.0005', 'in'),
  limit('bore-error', 'after', '-0.0005', '0.0005', 'in'),
  usually('hone-allowance', 'before', '0.004', 'in'),
  usually('clean-up', 'before', '0.0005', 'in'),
  printed(limit('wall-thickness', 'before', '0.125', null, 'in'), 'trade article on ultrasonic inspection'),
  printed(limit('crosshatch', 'after', '30', '60', 'deg'), 'engine-shop web article on honing; included angle'),
  printed(usually('ring-factor-top', 'after', '0.0040', 'ratio'), 'web trade text quoting ring makers'),
  printed(usually('ring-factor-second', 'after', '0.0050', 'ratio'), 'web trade text quoting ring makers'),
  limit('ring-spare-top', 'after', '0', null, 'in'),
  limit('ring-spare-second', 'after', '0', null, 'in'),
  limit('liner-spread', 'after', null, '0.002', 'in'),
  printed(limit('main-out-of-round', 'after', null, '0.001', 'in'), 'exam-style web text, weak source'),
  printed(limit('main-out-of-round', 'before', null, '0.001', 'in'), 'exam-style web text, weak source'),
  printed(limit('main-vertical', 'before', null, '0', 'in'), 'exam-style web text, weak source'),
  printed(limit('main-vertical', 'after', null, '0', 'in'), 'exam-style web text, weak source'),
  ...(['before', 'after'] as const).flatMap((stage) => [
    printed(limit('main-step', stage, null, '0.001', 'in'), 'web question-and-answer text, weak source'),
    printed(limit('line-error', stage, null, '0.002', 'in'), 'web question-and-answer text, weak source'),
  ]),
  limit('end-play', 'before', null, '0.015', 'in'),
  limit('end-play', 'after', '0.004', '0.010', 'in'),
  limit('cam-clearance', 'after', '0.002', '0.004', 'in'),
];
