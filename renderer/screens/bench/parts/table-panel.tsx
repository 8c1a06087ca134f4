/** What lies open below the table: the place the hand is at, or what was asked for instead. */
import type { SheetRow } from '#core/readings/compute/sheet-model.ts';
import type { ReadingGroup } from '../../../kit/bench-reading-table.tsx';
import type { Gauge } from '../hooks/use-preview.ts';
import type { ReadingEntry } from '../hooks/use-reading-entry.ts';
import type { TableHand } from '../hooks/use-table-hand.ts';
import type { At, Spot } from '../reading-view.ts';
import { GaugePanel } from './gauge-panel.tsx';
import { Oversize } from './oversize.tsx';
import { PaperRow } from './paper-row.tsx';
import { RowSwitches } from './row-switches.tsx';
import { TablePicture } from './table-picture.tsx';
import { TablePlace } from './table-place.tsx';
import { ToDoList } from './to-do-list.tsx';

/** Null: readings are typed. */
export type Panel = 'gauge' | 'paper' | 'rows' | 'picture' | 'oversize' | 'to-do' | null;

export function TablePanel({
  panel,
  onPanel,
  spot,
  at,
  order,
  groups,
  typed,
  hand,
  entry,
  gauge,
  onGauge,
  operation,
}: Readonly<{
  panel: Panel;
  onPanel: (panel: Panel) => void;
  spot: Spot;
  at: At;
  order: readonly string[];
  /** The columns on this page. */
  groups: readonly ReadingGroup[];
  typed: readonly SheetRow[];
  hand: TableHand;
  entry: ReadingEntry;
  gauge: Gauge;
  onGauge: (gauge: Gauge) => void;
  operation: number | null;
}>) {
  const { sheet } = spot;
  const close = () => onPanel(null);
  const rowBy = (by: 1 | -1): string => typed[typed.findIndex((row) => row.key === at.row) + by]?.key ?? at.row;
  switch (panel) {
    case 'paper':
      return (
        <PaperRow
          key={at.row}
          spot={spot}
          order={order}
          gauge={gauge}
          operation={operation}
          onRow={() => hand.choose(order[0] ?? at.column, rowBy(1))}
          onClose={close}
        />
      );
    case 'gauge':
      return (
        <GaugePanel
          spot={spot}
          gauge={gauge}
          onGauge={onGauge}
          onPaper={() => onPanel('paper')}
          onRows={() => onPanel('rows')}
          onClose={close}
        />
      );
    case 'rows':
      return <RowSwitches sheet={sheet} onClose={close} />;
    case 'to-do':
      return (
        <ToDoList
          sheet={sheet}
          onGo={(column) => {
            hand.choose(column, null);
            close();
          }}
          onClose={close}
        />
      );
    case 'picture':
      return <TablePicture spot={spot} groups={groups} onClose={close} />;
    case 'oversize':
      return <Oversize sheet={sheet} operation={operation} onClose={close} />;
    case null:
      return (
        <TablePlace
          spot={spot}
          at={at}
          order={order}
          hand={hand}
          entry={entry}
          onRow={(by) => hand.choose(at.column, rowBy(by))}
        />
      );
  }
}
