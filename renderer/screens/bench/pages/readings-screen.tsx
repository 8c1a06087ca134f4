/** The tables of a casting, and the facts a person ticks. */
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { Tick } from '../../../kit/choice.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { SaveReadings } from '../../../kit/save-readings.tsx';
import { Empty, Sheet, SheetBody, SheetHead } from '../../../kit/sheet.tsx';
import { BandAct, BandTitle } from '../../../kit/slots.tsx';
import { deckAddress, limitsAddress, tableAddress } from '../bench-addresses.ts';
import type { BenchCasting } from '../bench-casting.ts';
import { isSurveyed } from '../deck-faces.ts';
import { KeptHere } from '../parts/kept-here.tsx';
import css from './readings-screen.module.css';

export function ReadingsScreen({ tag }: { tag: number }) {
  const bench = useAppQuery('floor/get-bench', { tag });
  const casting = bench.data?.castingId;
  const tables = useAppQuery(
    'readings/list-tables',
    { casting: casting ?? 1 },
    { enabled: casting !== undefined, ticket: bench.data?.ticketId },
  );
  return (
    <>
      <BandTitle>Readings of {tag}</BandTitle>
      <BandAct>
        <Button href={benchAddress(tag)}>Back to casting</Button>
      </BandAct>
      <KeptHere />
      <ErrorNote error={bench.error ?? tables.error} />
      {!tables.data && !tables.error && <Waiting />}
      {tables.data && (
        <Sheet title="Tables" note="touch one to read or type" scroll>
          {tables.data.length === 0 && <Empty>No table of readings fits this casting.</Empty>}
          <div className={css.tables}>
            <Rows label="Tables">
              {tables.data.map((table) => (
                <Row
                  key={table.code}
                  href={tableAddress(tag, table.code)}
                  title={<b>{table.words}</b>}
                  note={table.summary || 'No readings yet.'}
                />
              ))}
              {bench.data && isSurveyed(bench.data.kind) && (
                <Row
                  href={deckAddress(tag)}
                  title={<b>Survey of flatness</b>}
                  note="dial grid and straightedge on the drawing of each face"
                />
              )}
              <Row
                href={limitsAddress(tag)}
                title={<b>What judges it</b>}
                note="every limit with its source, who typed and who checked it"
              />
            </Rows>
          </div>
          {bench.data && bench.data.facts.length > 0 && <Facts bench={bench.data} />}
          {bench.data && (
            <>
              <SheetHead title="Readings as a file" note="with units, limits, verdicts and what was replaced" />
              <SaveReadings castings={[{ castingId: bench.data.castingId, tagNo: tag }]} />
            </>
          )}
        </Sheet>
      )}
    </>
  );
}

function Facts({ bench }: { bench: BenchCasting }) {
  const tick = useAppCommand('floor/tick-fact');
  return (
    <>
      <SheetHead title="Seen and ticked" />
      <SheetBody>
        {bench.facts.map((fact) => (
          <Tick
            key={fact.fact}
            checked={fact.holds}
            label={
              <>
                {fact.words} {fact.said && <small>{fact.said}</small>}
              </>
            }
            onChange={(holds) => void tick.send({ castingId: bench.castingId, fact: fact.fact, holds })}
          />
        ))}
        <ErrorNote error={tick.error} />
      </SheetBody>
    </>
  );
}
