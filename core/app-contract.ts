/** Every request a client may send: the contracts of all features, in the order of the features. */
import { askingContract } from './asking/contract.ts';
import { billingContract } from './billing/contract.ts';
import { castingsContract } from './castings/contract.ts';
import { catalogueContract } from './catalogue/contract.ts';
import { checkInContract } from './check-in/contract.ts';
import { customersContract } from './customers/contract.ts';
import { floorContract } from './floor/contract.ts';
import { homeContract } from './home/contract.ts';
import { intakeContract } from './intake/contract.ts';
import type { Contract } from './kernel/contract.ts';
import { moneyContract } from './money/contract.ts';
import { openingContract } from './opening/contract.ts';
import { partsContract } from './parts/contract.ts';
import { photosContract } from './photos/contract.ts';
import { pricingContract } from './pricing/contract.ts';
import { promisesContract } from './promises/contract.ts';
import { racksContract } from './racks/contract.ts';
import { ratesContract } from './rates/contract.ts';
import { readingsContract } from './readings/contract.ts';
import { releaseContract } from './release/contract.ts';
import { searchContract } from './search/contract.ts';
import { sheetsContract } from './sheets/contract.ts';
import { shopContract } from './shop/contract.ts';
import { signOffContract } from './sign-off/contract.ts';
import { staffContract } from './staff/contract.ts';
import { termsContract } from './terms/contract.ts';
import { ticketPageContract } from './ticket-page/contract.ts';
import { ticketsContract } from './tickets/contract.ts';

export const appContract = {
  ...shopContract,
  ...staffContract,
  ...catalogueContract,
  ...ratesContract,
  ...customersContract,
  ...termsContract,
  ...ticketsContract,
  ...castingsContract,
  ...intakeContract,
  ...photosContract,
  ...readingsContract,
  ...racksContract,
  ...moneyContract,
  ...floorContract,
  ...openingContract,
  ...checkInContract,
  ...askingContract,
  ...signOffContract,
  ...releaseContract,
  ...searchContract,
  ...ticketPageContract,
  ...promisesContract,
  ...homeContract,
  ...billingContract,
  ...partsContract,
  ...pricingContract,
  ...sheetsContract,
} as const satisfies Contract;

export type App = typeof appContract;
export type RequestName = keyof App;
