/** What the requests about readings, limits and gauges do. */
import { implement } from '../host/implement.ts';
import { readingsContract } from './contract.ts';
import { correctionHandlers } from './handlers/corrections.ts';
import { exportHandlers } from './handlers/exports.ts';
import { limitHandlers } from './handlers/limits.ts';
import { oversizeHandlers } from './handlers/oversize.ts';
import { readingHandlers } from './handlers/readings.ts';
import { surveyHandlers } from './handlers/surveys.ts';
import { tableHandlers } from './handlers/tables.ts';
import { toolHandlers } from './handlers/tools.ts';

export const readings = implement(readingsContract, {
  ...tableHandlers,
  ...readingHandlers,
  ...correctionHandlers,
  ...limitHandlers,
  ...toolHandlers,
  ...exportHandlers,
  ...surveyHandlers,
  ...oversizeHandlers,
});
