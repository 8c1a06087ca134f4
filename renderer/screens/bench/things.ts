/** What the things across a table are called. */
import type { Sheet } from '#core/readings/compute/sheet-model.ts';

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

/** `Valve`, `Cylinder`; `Place` for what has no name of its own. */
export const thingOf = (sheet: Sheet): string => THINGS[sheet.table.spotKind ?? ''] ?? 'Place';
