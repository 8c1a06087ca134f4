/** What is charged on a ticket: adding, changing, estimating, showing. */
import { implement } from '../host/implement.ts';
import { pricingContract } from './contract.ts';
import { adding } from './handlers/adding.ts';
import { changing } from './handlers/changing.ts';
import { estimates } from './handlers/estimates.ts';
import { quote } from './handlers/quote.ts';
import { sheet } from './handlers/sheet.ts';

export const pricing = implement(pricingContract, { ...adding, ...changing, ...estimates, ...sheet, ...quote });
