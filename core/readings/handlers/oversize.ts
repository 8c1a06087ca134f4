/** One size for the bores: the list with both rules, and the machinist's choice written as ordinary readings. */
import type { Ctx, Handlers } from '../../host/implement.ts';
import { badField, notFound, ruleBroken } from '../../kernel/errors.ts';
import type { CastingId, SpotId } from '../../kernel/ids.ts';
import { showExact, withMark } from '../../kernel/measure-show.ts';
import type { Bench } from '../compute/bench.ts';
import type { CellPlace } from '../compute/cells.ts';
import type { Kept } from '../compute/entry.ts';
import { oversizeChoiceOf } from '../compute/oversize-choice.ts';
import type { OversizeCandidate, OversizeChoice, OversizeRule, SizeShown } from '../compute/oversize-model.ts';
import type { readingsContract } from '../contract.ts';
import { readFacts } from '../store/facts.ts';
import { benchOf, checkOpen, checkOperation, getPlace, insert, SILENT, subjectOf } from './keep.ts';

const RULE_NOTES = { centred: 'bar centred on wear', original: 'bar kept on the first centre' } as const;

export const oversizeHandlers: Pick<
  Handlers<typeof readingsContract>,
  'readings/get-oversize-choice' | 'readings/use-oversize'
> = {
  'readings/get-oversize-choice': {
    run({ casting, only, sleeves }, { db, today }) {
      const facts = readFacts(db, casting, today);
      checkCylinders(facts.spots, [...(only ?? []), ...sleeves]);
      return oversizeChoiceOf(facts, { only, sleeves });
    },
  },
  'readings/use-oversize': {
    run({ casting, operation, only, sleeves, oversize, rule, sure }, ctx) {
      const bench = benchOf(ctx, casting);
      checkCylinders(bench.facts.spots, [...(only ?? []), ...sleeves]);
      checkOpen(bench, null);
      checkOperation(ctx, casting, operation);
      const choice = oversizeChoiceOf(bench.facts, { only, sleeves });
      const { candidate, finished } = getUsable(choice, oversize, rule);
      if (candidate.ask !== null && !sure) {
        throw badField('readings/pistons-not-measured', 'sure', candidate.ask, { facts: { oversize } });
      }
      const spots = [...choice.cylinders, ...choice.sleeves].map(({ spot }) => spot);
      const written = writeWanted(ctx, bench, { casting, operation, spots, finished, note: noteOf(candidate, rule) });
      const words = `${sizeWords(finished, choice.unit)}, ${candidate.words}: ${whereWords(choice)}`;
      return {
        output: { readings: written, words },
        activity: [
          {
            subject: subjectOf(bench),
            ticket: bench.facts.casting.ticket,
            words: `Finish bores at ${words}`,
            after: { oversize, rule, measured: candidate.measured, finished: finished.value },
          },
        ],
        touched: [bench.facts.casting.ticket],
      };
    },
  },
};

function checkCylinders(spots: Bench['facts']['spots'], asked: readonly SpotId[]): void {
  const isHere = (id: SpotId) => spots.some((it) => it.id === id && it.kind === 'cylinder');
  if (!spots.some((it) => it.kind === 'cylinder') || !asked.every(isHere)) {
    throw notFound('readings/no-such-cylinder', 'This cylinder');
  }
}

/** The size asked for, when it passes by the rule. */
function getUsable(choice: OversizeChoice, code: string, rule: OversizeRule) {
  const candidate = choice.candidates.find((it) => it.code === code);
  if (!candidate) throw notFound('readings/no-such-oversize', 'This oversize');
  const verdict = candidate[rule];
  if (verdict.name !== 'pass' || candidate.finished === null) {
    throw ruleBroken(
      'readings/oversize-refused',
      `${candidate.words}: ${verdict.words}. ${verdict.reason} Nothing is written. Choose another size or the other rule, or a person types the size wanted for each cylinder.`,
    );
  }
  return { candidate, finished: candidate.finished };
}

function noteOf(candidate: OversizeCandidate, rule: OversizeRule): string {
  const bore = candidate.boring === null ? '' : `, bore to ${candidate.boring.text}`;
  return `${candidate.words}${bore}, ${RULE_NOTES[rule]}, pistons ${candidate.pistonWords}`;
}

const sizeWords = ({ text, other }: SizeShown, unit: 'in' | 'mm'): string =>
  `${withMark(text, unit)}${other === null ? '' : ` (${other})`}`;

const whereWords = ({ which, sleeves }: OversizeChoice): string => {
  const sleeved = sleeves.map(({ label }) => label).join(', ');
  if (sleeved === '') return which;
  return which === 'none' ? `sleeve in ${sleeved}` : `${which}; sleeve in ${sleeved}`;
};

type Write = Readonly<{
  casting: CastingId;
  operation: Parameters<typeof checkOperation>[2];
  spots: readonly SpotId[];
  finished: SizeShown;
  note: string;
}>;

/** A figure that already stands there as wanted is not written again. */
function writeWanted(ctx: Ctx, bench: Bench, { operation, spots, finished, note }: Write) {
  const cells = spots.flatMap((spot) => {
    const place = getPlace(bench, { quantity: 'bore-wanted', spot, point: null, stage: 'before' }, 'only');
    const { current, choose } = bench.rows('bore-wanted', place.spot, null, 'before');
    if (choose.length > 0) {
      throw ruleBroken(
        'readings/choose-first',
        `Two people wrote a size wanted for cylinder ${place.spot?.label ?? ''}. Nothing is written. Choose which one stands, then use the size.`,
      );
    }
    const isThere = current?.kind === 'number' && current.value === finished.value && current.note === note;
    return isThere ? [] : [{ place, supersedes: current?.id ?? null }];
  });
  if (cells.length === 0) {
    throw ruleBroken(
      'readings/oversize-there',
      'This size is written already for these cylinders. Nothing is changed.',
    );
  }
  return cells.map(({ place, supersedes }) =>
    insert(ctx, bench, place, keptSize(place, finished.value), SILENT, { operation, supersedes, reason: null, note }),
  );
}

/** As a person would type it, in the unit of the row; in millimetres where inches do not hold it exactly. */
function keptSize(place: CellPlace, value: number): Kept {
  const typed = place.unit === 'in' ? showExact(value, 'in', 4) : '';
  const isExact = place.unit === 'in' && value % 254 === 0 && /^\d+\.\d{4,5}$/.test(typed);
  const unit = isExact ? 'in' : 'mm';
  return { kind: 'number', typed: isExact ? typed : showExact(value, 'mm', 3), unit, value, mark: 'entered' };
}
