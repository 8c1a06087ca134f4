/** Readings of a casting as a file. */
import type { Handlers } from '../../host/implement.ts';
import { exportRows } from '../compute/export.ts';
import type { ReadingsExport } from '../compute/export-model.ts';
import { csvOf, jsonOf } from '../compute/export-text.ts';
import type { exportContract } from '../contract/export.ts';
import { readExportHead } from '../store/export-head.ts';
import { readFacts } from '../store/facts.ts';
import { listTables } from '../store/needed.ts';

const FILES = {
  csv: { mime: 'text/csv;charset=utf-8', write: csvOf },
  json: { mime: 'application/json', write: jsonOf },
} as const;

export const exportHandlers: Handlers<typeof exportContract> = {
  'readings/export-readings': {
    run({ casting, as }, { db, today, now }) {
      const facts = readFacts(db, casting, today);
      const { number, castingNumber, customer, certified } = readExportHead(db, casting);
      const { tag, words, kind, material, position } = facts.casting;
      const rows = exportRows(facts, listTables(db, facts), { ticket: number, castingNumber });
      const data: ReadingsExport = {
        format: 'benchtag-readings',
        version: 1,
        made: now,
        casting: {
          tag,
          ticket: number,
          castingNumber,
          words,
          kind,
          material,
          position,
          guardBand: facts.guard,
          certified,
          customer,
        },
        rows,
      };
      const { mime, write } = FILES[as];
      return { fileName: `readings-${tag}.${as}`, mime, text: write(data), rows: rows.length };
    },
  },
};
