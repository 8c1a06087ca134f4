/** From lines to invoices, and back by credit notes. */
import { implement } from '../host/implement.ts';
import { billingContract } from './contract.ts';
import { crediting } from './handlers/crediting.ts';
import { invoices } from './handlers/invoices.ts';
import { issuing } from './handlers/issuing.ts';

export const billing = implement(billingContract, { ...issuing, ...invoices, ...crediting });
