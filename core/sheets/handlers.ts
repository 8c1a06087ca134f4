/** Papers: gathered from every feature, drawn, kept. */
import { implement } from '../host/implement.ts';
import { sheetsContract } from './contract.ts';
import { documentHandlers } from './handlers/documents.ts';
import { paperHandlers } from './handlers/papers.ts';

export const sheets = implement(sheetsContract, { ...paperHandlers, ...documentHandlers });
