/** Castings and operations of the ticket page with their words. */
import type { z } from 'zod';
import { piecesWords } from '../../floor/compute/bench-words.ts';
import type { Moment } from '../../kernel/days.ts';
import { formatTime } from '../../kernel/format.ts';
import type { CastingId, OperationId, StaffId, TicketId, WorkLineId } from '../../kernel/ids.ts';
import type { listLineViews } from '../../lines/store/line-views.ts';
import type { Identity } from '../../racks/store/goods.ts';
import type { OperationFact } from '../../state/compute/facts.ts';
import type { OperationNow } from '../../state/compute/operations.ts';
import type { TicketNow } from '../../state/compute/tickets.ts';
import { doingWords, markOf, nextOf } from '../compute.ts';
import type { TicketCasting, TicketOperation } from '../contract/panes.ts';
import { atWords, type holdViews, type Reading, who } from './rows.ts';

type Operation = z.output<typeof TicketOperation>;
type Casting = z.output<typeof TicketCasting>;
type Line = ReturnType<typeof listLineViews>[number];

/** What the operation rows hold beside the facts. */
function extrasOf({ db }: Reading, ticket: TicketId) {
  const rows = db.all(
    db.q
      .selectFrom('operation as o')
      .innerJoin('casting as c', 'c.id', 'o.casting_id')
      .innerJoin('operation_kind as k', 'k.id', 'o.operation_kind_id')
      .innerJoin('work_centre as w', 'w.id', 'o.work_centre_id')
      .leftJoin('op_use as u', (join) =>
        join.onRef('u.operation_kind_id', '=', 'o.operation_kind_id').onRef('u.casting_kind', '=', 'c.kind'),
      )
      .leftJoin('staff as f', 'f.id', 'o.finished_by')
      .select([
        'o.id',
        'o.not_needed_why',
        'k.code',
        'k.shop_words',
        'k.gate',
        'w.code as centre_code',
        'w.name as centre_name',
        'u.charge_unit',
        'f.initials',
        'f.name',
      ])
      .where('o.ticket_id', '=', ticket),
  );
  return new Map(rows.map((row) => [row.id, row]));
}

const peopleOf = ({ db }: Reading, ids: readonly StaffId[]) =>
  new Map(
    ids.length === 0
      ? []
      : db
          .all(
            db.q
              .selectFrom('staff')
              .select(['id', 'initials', 'name'])
              .where('id', 'in', [...new Set(ids)]),
          )
          .map((row) => [row.id, row] as const),
  );

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Every operation in the order of the traveller, casting by casting. */
export function operationViews(reading: Reading, now: TicketNow, lines: readonly Line[]): Operation[] {
  const { facts } = now.known;
  const extras = extrasOf(reading, facts.ticket.id);
  const people = peopleOf(
    reading,
    facts.runs.map((run) => run.staffId),
  );
  const shown = new Set<number>();
  const order = new Map(facts.castings.map((casting, index) => [casting.id as number, index]));
  const sorted = [...facts.operations].sort(
    (a, b) => (order.get(a.castingId) ?? 0) - (order.get(b.castingId) ?? 0) || a.position - b.position || a.id - b.id,
  );
  const next = new Set(now.castings.map((casting) => nextOf(casting.operations)?.id));
  return sorted.map((fact): Operation => {
    const state = now.operations.find((one) => one.id === fact.id) as OperationNow;
    const extra = extras.get(fact.id);
    const line = lines.find((one) => one.id === fact.lineId);
    const first = line !== undefined && !shown.has(line.id);
    if (first) shown.add(line.id);
    return {
      ...plainOf(fact, extra),
      word: state.word,
      mark: markOf(state),
      right: rightOf(state, extra?.initials ?? null),
      covered: state.covered,
      mayStart: state.word === 'ready to start' || state.word === 'stopped',
      next: next.has(fact.id),
      stops: state.stops.map(reasonView),
      running: state.running.map((run) => ({ ...namedOf(people, run.staffId), at: run.startedAt })),
      finished:
        fact.finishedAt === null
          ? null
          : { at: fact.finishedAt, by: who(fact.finishedBy, extra?.initials ?? null, extra?.name ?? null) },
      notNeeded: fact.notNeededAt === null ? null : { at: fact.notNeededAt, why: extra?.not_needed_why ?? '' },
      group: groupOf(line, fact),
      line: fact.lineId as WorkLineId | null,
      amount: first ? line.amount : null,
      whoWords: whoWords(reading, fact, state, extra?.initials ?? null, people),
    };
  });
}

type Extra = ReturnType<typeof extrasOf> extends Map<unknown, infer V> ? V : never;

const plainOf = (fact: OperationFact, extra: Extra | undefined) => ({
  id: fact.id as OperationId,
  version: fact.version,
  castingId: fact.castingId as CastingId,
  kindCode: fact.kind.code,
  words: capital(extra?.shop_words ?? fact.kind.words),
  second: [piecesWords(fact.units, extra?.charge_unit ?? null), fact.setUp, fact.instruction]
    .filter(Boolean)
    .join(', '),
  units: fact.units,
  instruction: fact.instruction,
  centre: { id: fact.centreId, code: extra?.centre_code ?? '', name: fact.centreName },
  gate: extra?.gate ?? ('none' as const),
  plannedSeconds: fact.plannedSeconds as number,
});

const reasonView = (reason: OperationNow['stops'][number]) => ({
  ...reason,
  wayOn: reason.wayOn && { ...reason.wayOn, input: undefined },
});

const namedOf = (people: ReturnType<typeof peopleOf>, id: StaffId) => ({
  staff: id,
  initials: people.get(id)?.initials ?? '',
  name: people.get(id)?.name ?? '',
});

/** "in package", "added A2", or empty. */
function groupOf(line: Line | undefined, fact: OperationFact): string {
  if (fact.redoOf !== null) return 'again';
  if (line?.option) return `added ${line.option}`;
  return line?.kind === 'package' ? 'in package' : '';
}

function rightOf(state: OperationNow, initials: string | null): string {
  if (state.word === 'done' || state.word === 'signed')
    return initials === null ? state.word : `${state.word} ${initials}`;
  const stop = state.stops[0];
  if (stop && state.word !== 'started') return stop.short;
  return state.word;
}

/** "K.T. Mon 9 Mar 14:10", "started 10:20, D.R." */
function whoWords(
  reading: Reading,
  fact: OperationFact,
  state: OperationNow,
  finished: string | null,
  people: ReturnType<typeof peopleOf>,
): string {
  if (fact.finishedAt !== null) return `${finished ?? ''} ${atWords(reading, fact.finishedAt)}`.trim();
  const run = state.running[0];
  return run ? startedWords(reading, run.startedAt, people.get(run.staffId)?.initials ?? '') : '';
}

const startedWords = ({ local, settings }: Reading, at: Moment, initials: string): string =>
  `${formatTime(local(at).minute, settings)}, ${initials}`;

/** Castings with their word, bar and what they are doing. */
export function castingViews(
  reading: Reading,
  now: TicketNow,
  identities: readonly Identity[],
  operations: readonly Operation[],
  holds: ReturnType<typeof holdViews>,
): Casting[] {
  return identities.map((identity): Casting => {
    const state = now.castings.find((one) => one.id === identity.castingId);
    const own = operations.filter((one) => one.castingId === identity.castingId);
    const counted = own.filter((one) => one.mark !== 'off');
    const done = counted.filter((one) => one.mark === 'done').length;
    const hold =
      holds.find((one) => one.castingId === identity.castingId) ??
      holds.find((one) => one.castingId === null && one.operationId === null) ??
      holds.find((one) => own.some((o) => o.id === one.operationId));
    const word = state?.word ?? 'received';
    const byId = (id: number) => own.find((one) => one.id === id);
    const started = (id: number) => {
      const run = byId(id)?.running[0];
      return run ? startedWords(reading, run.at, run.initials) : '';
    };
    return {
      ...identity,
      word,
      wordWords: word === 'on hold' && hold ? hold.reasonWords : word,
      wordMore: word === 'on hold' && hold ? holdWords(reading, hold) : nextCentre(own),
      held: word === 'on hold',
      bar: counted.map((one) => ({
        operation: one.id,
        mark: one.mark,
        held: holds.some((h) => h.operationId === one.id),
      })),
      done,
      of: counted.length,
      nowWords: state ? doingWords(state, (id) => byId(id)?.words ?? '', started) : '',
      doneWords: `${done} of ${counted.length} done`,
      signedWords: state?.signed ? 'signed off' : null,
    };
  });
}

/** "since Tue 10 Mar 11:05, owner Nadia". */
const holdWords = (reading: Reading, hold: ReturnType<typeof holdViews>[number]): string =>
  `since ${atWords(reading, hold.openedAt)}, owner ${hold.owner?.name ?? hold.ownerRole}`;

/** "surfacer next". */
function nextCentre(own: readonly Operation[]): string | null {
  const next = own.find((one) => one.next);
  return next ? `${next.centre.name} next` : null;
}
