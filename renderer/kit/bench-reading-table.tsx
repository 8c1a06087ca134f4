/** Readings as the machinist expects them: things across in the order they sit, quantities down, limits last. */
import { memo, type RefObject, useEffect, useRef } from 'react';
import css from './bench-reading-table.module.css';
import { classes } from './class-names.ts';
import { LimitMark, type Mark } from './mark.tsx';

export type ReadingColumn = Readonly<{ key: string; label: string }>;
export type ReadingGroup = Readonly<{
  key: string;
  /** INTAKE SIDE, LEFT BANK; empty for a single group. */
  words: string;
  /** `front to rear`. */
  note: string;
  columns: readonly ReadingColumn[];
}>;

export type ReadingCell = Readonly<{
  /** What stands in the cell; one entry a line. Empty: not measured. `-` : not applicable. */
  lines: readonly string[];
  /** In a verdict cell the mark and word are shown; in others the mark stands beside the figure. */
  mark?: Mark | undefined;
  /** Words of the mark where the row shows them: `too tall`. */
  markWords?: string | undefined;
  /** A value that stood here before, shown struck. */
  struck?: string | undefined;
  /** Kept on this tablet and not yet sent. */
  waiting?: boolean | undefined;
}>;

export type ReadingRow = Readonly<{
  key: string;
  label: string;
  /** The whole label, where `label` leaves out what the rows above say. */
  full?: string | undefined;
  /** Something else begins here: a stronger line above. */
  starts?: boolean | undefined;
  /** `read` bold figures that are typed, `plain` small words that are, `derived` computed, `verdict` marks with words. */
  kind: 'read' | 'derived' | 'plain' | 'verdict';
  /** Limits of the row, shown last where there is room. */
  limits?: string | undefined;
  /** By column key; a missing one is blank. */
  cells: Readonly<Record<string, ReadingCell>>;
}>;

export type ReadingTableProps = Readonly<{
  label: string;
  /** Head of the first column: `Valve`. */
  thing: string;
  groups: readonly ReadingGroup[];
  rows: readonly ReadingRow[];
  /** Column and row the hand is at. */
  current: Readonly<{ column: string; row: string }>;
  /** What is being typed in the current cell. */
  typing: string;
  onChoose: (column: string, row: string | null) => void;
  /** Limits as the last column. */
  limits?: boolean;
  /** Beside the group words: the unit all of it is read in. */
  corner?: string | undefined;
}>;

/** So many columns leave room for the mark of a pass beside its figure. */
const FEW = 9;

export function ReadingTable(props: ReadingTableProps) {
  const { groups, rows, limits = false } = props;
  // One column across: the words of a verdict have room beside its mark.
  const roomy = groups.length === 1 && groups[0]?.columns.length === 1;
  const named = groups.some((group) => group.words !== '');
  const few = groups.reduce((sum, group) => sum + group.columns.length, 0) <= FEW;
  const sheet = useRef<HTMLDivElement>(null);
  useInSight(sheet, `${props.current.row} ${props.current.column} ${rows.length}`);
  return (
    <div className={css.sheet} ref={sheet}>
      <table className={classes(css.table, roomy && css.roomy)}>
        <caption className={css.spoken}>{props.label}</caption>
        <colgroup>
          <col className={css.headColumn} />
          {groups.flatMap((group) => group.columns.map((column) => <col key={column.key} />))}
          {limits && <col className={css.limitColumn} />}
        </colgroup>
        <thead>
          {named && (
            <tr>
              <td className={css.corner}>{props.corner}</td>
              {groups.map((group) => (
                <th
                  key={group.key}
                  colSpan={group.columns.length}
                  scope="colgroup"
                  className={classes(css.group, css.first)}
                >
                  {group.words} <span>{group.note}</span>
                </th>
              ))}
              {limits && <td />}
            </tr>
          )}
          <tr>
            <th scope="col" className={css.rowHead}>
              {props.thing}
            </th>
            {groups.map((group) =>
              group.columns.map((column, n) => <Head key={column.key} column={column} first={n === 0} {...props} />),
            )}
            {limits && (
              <th scope="col" className={css.limits}>
                Limits
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <BodyRow
              key={row.key}
              row={row}
              groups={groups}
              currentColumn={props.current.column}
              typing={row.key === props.current.row ? props.typing : null}
              limits={limits}
              room={roomy ? 'words' : few ? 'marks' : 'figures'}
              onChoose={props.onChoose}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** What stands beside a figure: mark and words, every mark, or only the mark of what does not pass. */
type Room = 'words' | 'marks' | 'figures';

/** The row the hand is at is always seen, between the heads and the verdicts; also when the table gets less room. */
function useInSight(sheet: RefObject<HTMLElement | null>, current: string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: another place, another row to bring into sight.
  useEffect(() => {
    const show = () => sheet.current?.querySelector('[data-current]')?.scrollIntoView?.({ block: 'nearest' });
    show();
    if (!sheet.current) return;
    const room = new ResizeObserver(show);
    room.observe(sheet.current);
    return () => room.disconnect();
  }, [sheet, current]);
}

function Head({
  column,
  first,
  current,
  onChoose,
}: Pick<ReadingTableProps, 'current' | 'onChoose'> & Readonly<{ column: ReadingColumn; first: boolean }>) {
  const at = column.key === current.column;
  return (
    <th scope="col" className={classes(css.column, first && css.first, at && css.atHead)}>
      <button type="button" aria-pressed={at} tabIndex={at ? 0 : -1} onClick={() => onChoose(column.key, null)}>
        {column.label}
      </button>
    </th>
  );
}

const BodyRow = memo(function BodyRow({
  row,
  groups,
  currentColumn,
  typing,
  limits,
  room,
  onChoose,
}: {
  row: ReadingRow;
  groups: readonly ReadingGroup[];
  currentColumn: string;
  typing: string | null;
  limits: boolean;
  room: Room;
  onChoose: ReadingTableProps['onChoose'];
}) {
  return (
    <tr className={classes(css[row.kind], row.starts && css.starts)} data-current={typing === null ? undefined : ''}>
      <th scope="row" className={css.rowHead} aria-label={row.full}>
        {row.label}
      </th>
      {groups.map((group) =>
        group.columns.map((column, n) => {
          const at = column.key === currentColumn;
          return (
            <Cell
              key={column.key}
              cell={row.cells[column.key]}
              kind={row.kind}
              at={at}
              first={n === 0}
              room={room}
              typing={at ? typing : null}
              onChoose={() => onChoose(column.key, row.kind === 'read' || row.kind === 'plain' ? row.key : null)}
            />
          );
        }),
      )}
      {limits && <td className={css.limits}>{row.limits}</td>}
    </tr>
  );
});

const WASH: Readonly<Record<Mark, 'pass' | 'fail' | 'close' | 'blank'>> = {
  pass: 'pass',
  over: 'fail',
  under: 'fail',
  found: 'fail',
  close: 'close',
  'not-measured': 'blank',
  'no-limit': 'blank',
};

function Cell({
  cell,
  kind,
  at,
  first,
  room,
  typing,
  onChoose,
}: {
  cell: ReadingCell | undefined;
  kind: ReadingRow['kind'];
  at: boolean;
  first: boolean;
  room: Room;
  typing: string | null;
  onChoose: () => void;
}) {
  const wash = kind === 'verdict' && cell?.mark ? css[`wash-${WASH[cell.mark]}`] : undefined;
  return (
    // The head of the column is the button; a touch anywhere in the column is a short way to it.
    // biome-ignore lint/a11y/useKeyWithClickEvents: the column's head does the same by keyboard.
    <td className={classes(first && css.first, at && css.at, wash, cell?.waiting && css.waiting)} onClick={onChoose}>
      {typing !== null && typing !== '' ? (
        <span className={css.typing}>{typing}</span>
      ) : (
        <Content cell={cell} kind={kind} caret={typing !== null} room={room} />
      )}
    </td>
  );
}

function Content({
  cell,
  kind,
  caret,
  room,
}: {
  cell: ReadingCell | undefined;
  kind: ReadingRow['kind'];
  caret: boolean;
  room: Room;
}) {
  if (kind === 'verdict') {
    const mark = cell?.mark ?? 'not-measured';
    return (
      <span className={classes(css.mark, css[WASH[mark]])}>
        <LimitMark mark={mark} />
        {cell?.markWords ?? 'not measured'}
      </span>
    );
  }
  return (
    <>
      {cell?.struck && <s className={css.struck}>{cell.struck}</s>}
      {cell?.lines.map((line) => (
        <span key={line} className={css.line}>
          {line}
          <Beside cell={cell} room={room} />
        </span>
      ))}
      {caret && !cell?.lines.length && <i className={css.caret} aria-hidden="true" />}
    </>
  );
}

/** In a dense row only what does not pass carries its mark; a table of one column shows every verdict in words. */
function Beside({ cell, room }: { cell: ReadingCell; room: Room }) {
  const { mark } = cell;
  if (!mark || mark === 'not-measured') return null;
  if (mark === 'pass' && room === 'figures') return null;
  if (mark === 'no-limit' && room !== 'words') return null;
  return (
    <span className={classes(css.beside, css[WASH[mark]])}>
      <LimitMark mark={mark} />
      <span className={room === 'words' ? undefined : css.spoken}>{cell.markWords ?? mark}</span>
    </span>
  );
}
