/** Asking the customer and writing down the answer. */
import { implement } from '../host/implement.ts';
import { askingContract } from './contract.ts';
import { answers } from './handlers/answers.ts';
import { ask } from './handlers/ask.ts';
import { questions } from './handlers/questions.ts';

export const asking = implement(askingContract, { ...ask, ...answers, ...questions });
