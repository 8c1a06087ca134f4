/** One table of readings of one casting: things across as they sit, the place the hand is at below, the pad beside it. */
import { useMemo, useState } from 'react';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { useOutboxState } from '../../../client/use-outbox.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { NumberPad, typeKey } from '../../../kit/bench-number-pad.tsx';
import { ReadingTable } from '../../../kit/bench-reading-table.tsx';
import { Button } from '../../../kit/button.tsx';
import { classes } from '../../../kit/class-names.ts';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Empty } from '../../../kit/sheet.tsx';
import { BandAct, BandTitle } from '../../../kit/slots.tsx';
import { type BenchCasting, operationOf } from '../bench-casting.ts';
import { useGauge } from '../hooks/use-gauge.ts';
import { type ReadingEntry, useReadingEntry } from '../hooks/use-reading-entry.ts';
import { useRoom } from '../hooks/use-room.ts';
import { type TableHand, useTableHand } from '../hooks/use-table-hand.ts';
import { GaugePanel } from '../parts/gauge-panel.tsx';
import { KeptHere } from '../parts/kept-here.tsx';
import { NotTaken } from '../parts/not-taken.tsx';
import { PaperRow } from '../parts/paper-row.tsx';
import { ReadingDetail } from '../parts/reading-detail.tsx';
import { ReadingField } from '../parts/reading-field.tsx';
import { TableHead } from '../parts/table-head.tsx';
import { TwoReadings } from '../parts/two-readings.tsx';
import { WordKeys } from '../parts/word-keys.tsx';
import { waitingByPlace } from '../reading-parcel.ts';
import { type At, isTyped, isWords, loudNotes, pagesOf, rowsOf, type Spot } from '../reading-view.ts';
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
      <KeyHints hints={HINTS} />
      <KeptHere />
      {error && <ErrorNote error={error} acts={<Button onPress={() => void sheet.refetch()}>Try again</Button>} />}
      {!error && !(bench.data && sheet.data) && <Waiting />}
      {bench.data && sheet.data && <Table bench={bench.data} sheet={sheet.data} />}
    </>
  );
}

const HINTS = [
  { keys: ['Enter'], words: 'next' },
  { keys: [keysOf('undo')], words: 'undo' },
];

type Panel = 'gauge' | 'paper' | null;

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
  const hand = useTableHand(sheet, order);
  const [gauge, setGauge] = useGauge(
    sheet.table.code,
    sheet.tools.map((tool) => tool.id),
  );
  const operation = operationOf(bench, sheet.table.code)?.id ?? null;
  const entry = useReadingEntry({ sheet, order, hand, gauge, operation });
  const rows = useMemo(() => rowsOf(sheet, waitingByPlace(entries)), [sheet, entries]);
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
  const tool = sheet.tools.find((one) => one.id === gauge.tool);

  return (
    <div className={css.table}>
      <div className={css.top}>
        <TableHead
          bench={bench}
          spot={spot}
          pages={pages}
          page={page}
          onPage={(n) => hand.choose(pages[n]?.groups[0]?.columns[0]?.key ?? at.column, null)}
          gaugeWords={tool?.name ?? 'not named'}
          panelOpen={panel !== null}
          onPanel={() => setPanel(panel ? null : 'gauge')}
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
        groups={shown?.groups ?? []}
        rows={rows}
        current={at}
        typing={text}
        onChoose={hand.choose}
        limits={(shown?.groups.reduce((sum, group) => sum + group.columns.length, 0) ?? 0) <= room / 2}
      />
      <div className={classes(css.low, sheet.locked && css.alone)}>
        {panel === 'paper' && (
          <PaperRow
            key={at.row}
            spot={spot}
            order={order}
            gauge={gauge}
            operation={operation}
            onRow={() => hand.choose(order[0] ?? at.column, nextRow(sheet, at.row, 1) ?? at.row)}
            onClose={() => setPanel(null)}
          />
        )}
        {panel === 'gauge' && (
          <GaugePanel
            spot={spot}
            gauge={gauge}
            onGauge={setGauge}
            onPaper={() => setPanel('paper')}
            onClose={() => setPanel(null)}
          />
        )}
        {panel === null && <Place spot={spot} at={at} order={order} hand={hand} entry={entry} />}
        {panel !== 'paper' && !sheet.locked && <Keys spot={spot} hand={hand} entry={entry} operation={operation} />}
      </div>
    </div>
  );
}

type HandProps = Readonly<{ spot: Spot; hand: TableHand; entry: ReadingEntry }>;

/** The place the hand is at, with the field. */
function Place({ spot, at, order, hand, entry }: HandProps & Readonly<{ at: At; order: readonly string[] }>) {
  const { sheet, row, column, cell } = spot;
  const { text } = hand;
  return (
    <ReadingDetail
      entry={entry}
      spot={spot}
      position={
        order.length > 1 ? `${thingOf(sheet).toLowerCase()} ${order.indexOf(at.column) + 1} of ${order.length}` : ''
      }
      field={
        <ReadingField
          label={`${column.label}, ${row.words}`}
          text={text}
          standing={cell?.text || (row.quantity === 'shims-fitted' ? (column.shims?.text ?? '') : '')}
          unit={/[a-z]/i.test(text) ? '' : row.unitMark}
          shut={sheet.locked}
          onText={hand.setText}
          onNext={entry.next}
          onPrevious={entry.previous}
          onRow={(by) => hand.choose(at.column, nextRow(sheet, at.row, by) ?? at.row)}
        />
      }
    />
  );
}

function Keys({ spot, hand, entry, operation }: HandProps & Readonly<{ operation: number | null }>) {
  const { text, setText } = hand;
  if (isWords(spot.row)) {
    return (
      <WordKeys
        spot={spot}
        operation={operation}
        text={text}
        onText={setText}
        onTake={(words) => entry.take(words, true)}
        onPrevious={entry.previous}
        onNext={entry.next}
      />
    );
  }
  const unit = otherUnitOf(text, spot.row.unitMark);
  return (
    <NumberPad
      thing={thingOf(spot.sheet).toLowerCase()}
      onKey={(key) => setText(typeKey(text, key))}
      unit={unit && { words: unit.words, onChange: () => setText(unit.text) }}
      onSame={entry.same}
      onAll={entry.all}
      undo={entry.undo}
      onPrevious={entry.previous}
      onNext={entry.next}
    />
  );
}

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

const THINGS: Readonly<Record<string, string>> = {
  valve: 'Valve',
  cylinder: 'Cylinder',
  main: 'Main',
  cam_journal: 'Journal',
  deck_corner: 'Corner',
  deck_line: 'Line',
  chamber: 'Chamber',
  lifter: 'Lifter',
  plug: 'Plug',
  journal: 'Journal',
  rod: 'Rod',
  port: 'Port',
};
const thingOf = (sheet: Sheet): string => THINGS[sheet.table.spotKind ?? ''] ?? 'Place';

function nextRow(sheet: Sheet, from: string, by: 1 | -1): string | null {
  const typed = sheet.rows.filter((row) => row.shown && isTyped(row));
  return typed[typed.findIndex((row) => row.key === from) + by]?.key ?? null;
}

const OTHER: Readonly<Record<string, string>> = { in: 'mm', mm: 'in', N: 'lbf', lbf: 'N', µm: 'µin', µin: 'µm' };

/** The unit key: writes the other unit behind the figure, or takes it away again. */
function otherUnitOf(text: string, mark: string): { words: string; text: string } | undefined {
  const other = OTHER[mark];
  if (other === undefined) return undefined;
  const bare = text.replace(/\s*[a-zµ]+$/i, '');
  return bare === text ? { words: other, text: `${text} ${other}` } : { words: mark, text: bare };
}
