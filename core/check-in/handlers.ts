/** The requests of checking in, by what they are about. */
import { implement } from '../host/implement.ts';
import { checkInContract } from './contract.ts';
import { castingsOnTickets } from './handlers/castings.ts';
import { checkingIn } from './handlers/check-in.ts';
import { likening } from './handlers/like.ts';
import { confirming } from './handlers/metal.ts';
import { overTheCounter } from './handlers/quick.ts';
import { signing } from './handlers/sign.ts';

export const checkIn = implement(checkInContract, {
  ...checkingIn,
  ...overTheCounter,
  ...likening,
  ...castingsOnTickets,
  ...confirming,
  ...signing,
});
