/** What the requests of the bench do. */
import { implement } from '../host/implement.ts';
import { floorContract } from './contract.ts';
import { bench } from './handlers/bench.ts';
import { lists } from './handlers/lists.ts';
import { notes } from './handlers/notes.ts';
import { plan } from './handlers/plan.ts';
import { wash } from './handlers/wash.ts';
import { work } from './handlers/work.ts';

export const floor = implement(floorContract, { ...lists, ...bench, ...work, ...plan, ...notes, ...wash });
