/** What must be watched at the wash. */
import { type Quantity, quantity } from '../quantity.ts';

export const CLEANING: readonly Quantity[] = [
  quantity('cleaning-air', 'air at the blow gun', {
    family: 'pressure',
    optional: true,
    over: 'too high for cleaning',
    under: 'too low',
  }),
  quantity('spent-bath', 'spent bath, pH', {
    family: 'ratio',
    optional: true,
    over: 'hazardous waste',
    under: 'hazardous waste',
  }),
];
