/** The keys of every page where readings are typed: those of a keypad alone, and undo. */
import { keysOf } from '../../kit/keyboard.ts';

export const READING_HINTS = [
  { keys: ['Enter'], words: 'next' },
  { keys: ['+'], words: 'same as last' },
  { keys: ['*'], words: 'last digit off' },
  { keys: [keysOf('undo')], words: 'undo' },
];
