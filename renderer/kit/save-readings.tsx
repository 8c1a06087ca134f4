/** The readings of castings as files: CSV for a spreadsheet, JSON for a program. Rows for a list of a sheet. */
import { useState } from 'react';
import type { RequestRefused } from '../client/request-refused.ts';
import { saveText } from '../client/save-text.ts';
import { useClient } from '../client/use-app.ts';
import { ErrorNote } from './notice.tsx';
import { Row, Rows } from './rows.tsx';
import { SheetBody } from './sheet.tsx';

const KINDS = [
  { as: 'csv', words: 'CSV, for a spreadsheet' },
  { as: 'json', words: 'JSON, for a program' },
] as const;

type One = Readonly<{ castingId: number; tagNo: number }>;

export function SaveReadings({ castings }: { castings: readonly One[] }) {
  const client = useClient();
  const [said, setSaid] = useState('');
  const [refused, setRefused] = useState<RequestRefused | null>(null);
  const save = async (casting: number, as: 'csv' | 'json') => {
    setRefused(null);
    setSaid('Writing...');
    try {
      const file = await client.call('readings/export-readings', { casting, as });
      setSaid((await saveText(file)) ? `Saved: ${file.fileName}, ${file.rows} rows.` : 'Not saved.');
    } catch (thrown) {
      setSaid('');
      setRefused(thrown as RequestRefused);
    }
  };
  return (
    <>
      <div role="status">{said !== '' && <SheetBody>{said}</SheetBody>}</div>
      <ErrorNote error={refused} />
      <Rows label="Readings as a file">
        {castings.flatMap(({ castingId, tagNo }) =>
          KINDS.map(({ as, words }) => (
            <Row
              key={`${castingId} ${as}`}
              title={castings.length === 1 ? words : `Readings ${tagNo}: ${words}`}
              end="save it"
              onOpen={() => void save(castingId, as)}
            />
          )),
        )}
      </Rows>
    </>
  );
}
