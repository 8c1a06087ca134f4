/** One table of readings of one casting: things across as they sit, the place the hand is at below, the pad beside it. */
import { useMemo, useState } from 'react';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { useOutboxState } from '../../../client/use-outbox.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { ReadingTable } from '../../../kit/bench-reading-table.tsx';
import { Button } from '../../../kit/button.tsx';
import { classes } from '../../../kit/class-names.ts';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { useAct } from '../../../kit/keyboard.ts';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Empty } from '../../../kit/sheet.tsx';
import { BandAct, BandTitle } from '../../../kit/slots.tsx';
import { type BenchCasting, type BenchOperation, operationOf, stageNow } from '../bench-casting.ts';
import { useFresh } from '../hooks/use-fresh.ts';
import { useGauge } from '../hooks/use-gauge.ts';
import { useReadingEntry } from '../hooks/use-reading-entry.ts';
import { useRoom } from '../hooks/use-room.ts';
import { useStage } from '../hooks/use-stage.ts';
import { useTableHand } from '../hooks/use-table-hand.ts';
import { KeptHere } from '../parts/kept-here.tsx';
import { NotTaken } from '../parts/not-taken.tsx';
import { TableFoot } from '../parts/table-foot.tsx';
import { TableHead } from '../parts/table-head.tsx';
import { TableKeys } from '../parts/table-keys.tsx';
import { type Panel, TablePanel } from '../parts/table-panel.tsx';
import { TwoReadings } from '../parts/two-readings.tsx';
import { READING_HINTS } from '../reading-hints.ts';
import { rowLabels, type StageShown, stageStart } from '../reading-rows.ts';
import { loudNotes, pagesOf, rowsOf } from '../reading-view.ts';
import { thingOf } from '../things.ts';
import css from './table-screen.module.css';

export function TableScreen({ tag, table }: { tag: number; table: string }) {
  const bench = useAppQuery('floor/get-bench', { tag });
  const casting = bench.data?.castingId;
  const sheet = useAppQuery(
    'readings/get-table',
    { casting: casting ?? 1, table },
    { enabled: casting !== undefined, ticket: bench.data?.ticketId },
  );
  const error = bench.error ?? sheet.error;
  return (
    <>
      <BandTitle>{sheet.data?.table.words ?? 'Readings'}</BandTitle>
      <BandAct>
        <Button href={benchAddress(tag)}>Back to casting</Button>
      </BandAct>
      <KeyHints hints={READING_HINTS} />
      <KeptHere />
      {error && <ErrorNote error={error} acts={<Button onPress={() => void sheet.refetch()}>Try again</Button>} />}
      {!error && !(bench.data && sheet.data) && <Waiting />}
      {bench.data && sheet.data && <Table bench={bench.data} sheet={sheet.data} />}
    </>
  );
}

/** Panels that take the whole width: nothing is typed beside them. */
const WIDE: readonly Panel[] = ['paper', 'rows', 'picture', 'oversize'];

function Table({ bench, sheet }: { bench: BenchCasting; sheet: Sheet }) {
  const room = useRoom();
  const { entries } = useOutboxState();
  const [turned, setTurned] = useState(false);
  const [panel, setPanel] = useState<Panel>(null);
  const pages = useMemo(() => pagesOf(sheet, turned, room), [sheet, turned, room]);
  const order = useMemo(
    () => pages.flatMap((page) => page.groups.flatMap((group) => group.columns.map((column) => column.key))),
    [pages],
  );
  const work = operationOf(bench, sheet.table.code);
  const operation = idOf(work);
  const stages = useStage(sheet, order, stageNow(work, sheet.table.code));
  const hand = useTableHand(sheet, order, stages.typed);
  const [gauge, setGauge] = useGauge(
    sheet.table.code,
    sheet.tools.map((tool) => tool.id),
  );
  const { fresh, see } = useFresh(sheet);
  const entry = useReadingEntry({ sheet, order, hand, gauge, operation, see });
  const rows = useMemo(
    () => rowsOf(sheet, fresh, stages.shown, rowLabels(sheet, stages.shown)),
    [sheet, fresh, stages.shown],
  );
  // The pedal takes the reading or goes on; it never ends an operation.
  useAct('go', entry.next);
  useAct('undo', entry.undo?.onPress);

  const { at, text } = hand;
  const { spot } = entry;
  if (!at || !spot) return <Empty>{sheet.notes[0] ?? 'This table has nothing to read on this casting.'}</Empty>;
  const page = Math.max(
    0,
    pages.findIndex((one) => one.groups.some((group) => group.columns.some((column) => column.key === at.column))),
  );
  const shown = pages[page];
  const across = shown?.groups.reduce((sum, group) => sum + group.columns.length, 0) ?? 0;
  const tool = sheet.tools.find((one) => one.id === gauge.tool);
  const wide = WIDE.includes(panel);
  const toggle = (one: Panel) => setPanel(panel === one ? null : one);
  const toStage = (stage: StageShown) => {
    stages.setStage(stage);
    const start = stageStart(sheet, order, stage);
    if (start) hand.choose(start.column, start.row);
  };

  return (
    <div className={classes(css.table, wide && css.looking)}>
      <div className={css.top}>
        <TableHead
          bench={bench}
          spot={spot}
          pages={pages}
          page={page}
          onPage={(n) => hand.choose(pages[n]?.groups[0]?.columns[0]?.key ?? at.column, null)}
          stage={stages.stage}
          onStage={toStage}
          gaugeWords={tool?.name ?? 'not named'}
          panel={panel}
          onPanel={toggle}
          turned={turned}
          onTurn={() => setTurned(!turned)}
        />
        <Notes sheet={sheet} />
        <NotTaken spot={spot} entries={entries} onGo={hand.choose} />
        {spot.cell?.state === 'two readings' && (
          <TwoReadings label={`${spot.column.label} ${spot.row.words}`} readings={spot.cell.choose} />
        )}
      </div>
      <ReadingTable
        label={`${sheet.table.words} of ${bench.tag}`}
        thing={thingOf(sheet)}
        corner={spot.row.point === null ? undefined : spot.row.unitMark}
        groups={shown?.groups ?? []}
        rows={rows}
        current={at}
        typing={text}
        onChoose={hand.choose}
        limits={across <= MOST_WITH_LIMITS}
      />
      <div className={classes(css.low, (wide || sheet.locked) && css.alone)}>
        <div className={css.panel}>
          <TablePanel
            panel={panel}
            onPanel={setPanel}
            spot={spot}
            at={at}
            order={order}
            groups={shown?.groups ?? []}
            typed={stages.typed}
            hand={hand}
            entry={entry}
            gauge={gauge}
            onGauge={setGauge}
            operation={operation}
          />
          <TableFoot sheet={sheet} open={panel === 'to-do'} onOpen={() => toggle('to-do')} />
        </div>
        {!wide && !sheet.locked && <TableKeys spot={spot} hand={hand} entry={entry} operation={operation} />}
      </div>
    </div>
  );
}

/** Readings may belong to no operation. */
const idOf = (work: BenchOperation | null): number | null => work?.id ?? null;

/** Columns beside which the limits of a row find room. */
const MOST_WITH_LIMITS = 8;

function Notes({ sheet }: { sheet: Sheet }) {
  const notes = [
    ...(sheet.locked ? ['Signed off: these readings are locked. A lead can reopen the casting with a reason.'] : []),
    ...loudNotes(sheet),
  ];
  if (notes.length === 0) return null;
  return (
    <div className={css.notes}>
      <Notice kind={sheet.locked ? 'ask' : 'plain'}>{notes.join('. ')}</Notice>
    </div>
  );
}
