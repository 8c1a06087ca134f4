/** Money after the invoice. */
import { implement } from '../host/implement.ts';
import { moneyContract } from './contract.ts';
import { accounts } from './handlers/accounts.ts';
import { payments } from './handlers/payments.ts';

export const money = implement(moneyContract, { ...payments, ...accounts });
