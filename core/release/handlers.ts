/** The requests of handing over. */
import { implement } from '../host/implement.ts';
import { releaseContract } from './contract.ts';
import { pages } from './handlers/page.ts';
import { releasing } from './handlers/release.ts';

export const release = implement(releaseContract, { ...pages, ...releasing });
