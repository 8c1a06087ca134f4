/** Gauges: what they are worth and when they are checked next. Overdue warns, never blocks. */
import { findIdByCode } from '../../catalogue/store/codes.ts';
import type { Handlers } from '../../host/implement.ts';
import { badField, notFound, ruleBroken } from '../../kernel/errors.ts';
import { readTyped } from '../../kernel/measure.ts';
import { showExact, withMark } from '../../kernel/measure-show.ts';
import { type UnitCode, unitShape } from '../../kernel/measure-units.ts';
import type { readingsContract, ToolListed } from '../contract.ts';
import { listToolRows } from '../store/known.ts';
import * as store from '../store/tools.ts';

/** A figure of a gauge in its own unit; whole numbers stand as they are. */
function readFigure(text: string | null, unit: UnitCode, field: string): number | null {
  if (text === null) return null;
  const { family } = unitShape(unit);
  const read = readTyped(`${text} ${unit}`, { family, unit, signed: true });
  const plain = read.kind === 'figure' ? read : readTyped(text, { family, unit, signed: true });
  if (plain.kind !== 'figure') {
    const message = plain.kind === 'refused' ? plain.message : 'Type the figure, for example 0.0002.';
    throw badField('tools/bad-figure', field, message);
  }
  return plain.value;
}

function listed(row: ReturnType<typeof listToolRows>[number]): ToolListed {
  const { tool, rangeLow, rangeHigh, lastCheck, version } = row;
  const show = (value: number) => showExact(value, tool.unit, 0);
  const share = tool.uncertaintyBp === null ? '' : `± ${tool.uncertaintyBp / 100} %`;
  return {
    ...tool,
    version,
    lastCheck,
    uncertaintyText: tool.uncertainty === null ? share : `± ${withMark(show(tool.uncertainty), tool.unit)}`,
    range: rangeLow === null || rangeHigh === null ? '' : `${show(rangeLow)} – ${withMark(show(rangeHigh), tool.unit)}`,
  };
}

function getTool(db: Parameters<typeof store.findTool>[0], id: Parameters<typeof store.findTool>[1]) {
  const tool = store.findTool(db, id);
  if (!tool) throw notFound('tools/not-here', 'This gauge');
  return tool;
}

export const toolHandlers: Pick<
  Handlers<typeof readingsContract>,
  'tools/add-tool' | 'tools/retire-tool' | 'tools/record-check' | 'tools/list-tools'
> = {
  'tools/add-tool': {
    run(input, { db }) {
      const { name, kind, serial, unit } = input;
      if (store.findToolByName(db, name)) {
        throw badField('tools/name-used', 'name', `There is a gauge ${name} already. Give this one another name.`);
      }
      const workCentre = input.workCentre === null ? null : (findIdByCode(db, 'work_centre', input.workCentre) ?? null);
      if (input.workCentre !== null && workCentre === null) {
        throw badField('tools/no-such-centre', 'workCentre', 'This work centre is not in the catalogue.');
      }
      const tool = store.insertTool(db, {
        name,
        kind,
        serial,
        unit,
        workCentre,
        rangeLow: readFigure(input.rangeLow, unit, 'rangeLow'),
        rangeHigh: readFigure(input.rangeHigh, unit, 'rangeHigh'),
        resolution: readFigure(input.resolution, unit, 'resolution'),
        uncertainty: readFigure(input.uncertainty, unit, 'uncertainty'),
        uncertaintyBp: input.uncertaintyBp,
        setAgainst: input.setAgainst,
      });
      return {
        output: { tool, version: 1 },
        activity: [{ subject: ['tool', tool], words: `Added gauge ${name}, ${kind}` }],
      };
    },
  },
  'tools/retire-tool': {
    run({ tool: id, seenVersion }, { db, today }) {
      const tool = getTool(db, id);
      if (tool.retired_on !== null) throw ruleBroken('tools/retired', `${tool.name} is retired already.`);
      const version = store.retireTool(db, id, seenVersion, today);
      return { output: { version }, activity: [{ subject: ['tool', id], words: `Retired gauge ${tool.name}` }] };
    },
  },
  'tools/record-check': {
    run({ tool: id, on, result, nextDue }, { db }) {
      const tool = getTool(db, id);
      if (nextDue <= on) {
        throw badField('tools/next-due', 'nextDue', 'The next check comes after this one. Write a later day.');
      }
      store.insertToolCheck(db, { tool: id, on, result, nextDue });
      return {
        output: { tool: id },
        activity: [{ subject: ['tool', id], words: `Checked gauge ${tool.name}: ${result}, next ${nextDue}` }],
      };
    },
  },
  'tools/list-tools': {
    run: (_, { db, today }) =>
      listToolRows(db, today)
        .filter((row) => !row.tool.retired)
        .map(listed),
  },
};
