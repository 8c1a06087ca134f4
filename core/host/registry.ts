/** The features as the host runs them. A new feature adds its line here and in core/app-contract.ts. */
import { catalogue } from '../catalogue/handlers.ts';
import { opening } from '../opening/handlers.ts';
import { shop } from '../shop/handlers.ts';
import { staff } from '../staff/handlers.ts';
import type { Feature } from './implement.ts';

export const features: readonly Feature[] = [shop, staff, catalogue, opening];
