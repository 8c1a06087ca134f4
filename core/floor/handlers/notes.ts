/** What the bench says about a casting: found something, holds, near misses. */
import type { z } from 'zod';
import { type CastingRow, getCasting } from '../../castings/store.ts';
import type { Ctx, Handlers } from '../../host/implement.ts';
import { personOf } from '../../host/implement.ts';
import { keptPicture } from '../../host/kept-file.ts';
import type { StoredFile } from '../../host/services.ts';
import { addDays } from '../../kernel/days.ts';
import { AppError, badField, ruleBroken } from '../../kernel/errors.ts';
import type { CastingId, FindingId, TicketId } from '../../kernel/ids.ts';
import { insertPhoto, keepAttachment } from '../../photos/store.ts';
import { HOLD_OWNERS, HOLD_WORDS, type HoldReason } from '../../state/compute/words.ts';
import { ticketOfOperation } from '../../state/store/load-facts.ts';
import { nextOpenDay } from '../../tickets/compute/open-days.ts';
import { calendarOf } from '../../tickets/store.ts';
import type { floorContract, OpenHoldInput } from '../contract.ts';
import { conditionWords, findingKind } from '../store/findings.ts';
import { closeHold, getHold, getOperation, insertFinding, insertHold, insertIncident, listPair } from '../store.ts';

type Notes = Pick<
  Handlers<typeof floorContract>,
  'floor/report-finding' | 'floor/open-hold' | 'floor/close-hold' | 'floor/report-incident'
>;

export const notes: Notes = {
  'floor/report-finding': {
    prepare: (input, { services }) =>
      Promise.all(input.photos.map((photo, index) => keptPicture(photo.file, services, `photos.${index}.file`))),
    run(input, ctx, prepared) {
      const { db } = ctx;
      const casting = getCasting(db, input.castingId);
      const { words, offers } = saidOf(ctx, input);
      const finding = insertFinding(db, {
        casting_id: casting.id,
        ticket_id: casting.ticket_id,
        operation_id: input.operationId ?? null,
        finding_kind_id: input.findingKindId ?? null,
        condition_kind_id: input.conditionKindId ?? null,
        words,
        spot_id: input.spotId ?? null,
        place_words: input.place,
        answers_id: input.answersId ?? null,
      });
      keepPhotos(ctx, casting, finding, { photos: input.photos, files: prepared as readonly StoredFile[] });
      const { hold } = input;
      const holdId = hold ? openHold(ctx, hold, { ticket: casting.ticket_id, casting: casting.id }) : null;
      const said = `Found on ${casting.tag_no}: ${words}.`;
      return {
        output: {
          words: hold ? `${said} On hold: ${HOLD_WORDS[hold.reason]}.` : said,
          findingId: finding,
          holdId,
          otherOne: hold ? otherOnes(ctx, casting.id, hold.reason) : [],
          offers,
        },
        activity: [
          {
            subject: ['finding', finding],
            ticket: casting.ticket_id,
            words: said,
            after: { words, photos: input.photos.length, hold: hold?.reason ?? null },
          },
        ],
        touched: [casting.ticket_id],
      };
    },
  },
  'floor/open-hold': {
    run(input, ctx) {
      const on = placeOf(ctx, input);
      const hold = openHold(ctx, input, on);
      return {
        output: {
          words: `On hold: ${HOLD_WORDS[input.reason]}.`,
          holdId: hold,
          otherOne: on.casting === null ? [] : otherOnes(ctx, on.casting, input.reason),
        },
        activity: [
          {
            subject: ['hold', hold],
            ticket: on.ticket,
            words: `Hold: ${HOLD_WORDS[input.reason]}${input.words === null ? '' : `, ${input.words}`}`,
          },
        ],
        touched: [on.ticket],
      };
    },
  },
  'floor/close-hold': {
    run({ holdId, words }, ctx) {
      const hold = getHold(ctx.db, holdId);
      if (hold.closed_at !== null) throw ruleBroken('floor/hold-closed', 'This hold is closed already.');
      // An account on stop waits for a named yes (I33); the counter may ask for it, not give it.
      if (hold.reason === 'money' && !ctx.session.may.has('leads:decide')) {
        throw new AppError(
          'not-allowed',
          'floor/account-needs-a-yes',
          'The account waits for a yes. Ask a lead or the owner to close this hold under their own name.',
        );
      }
      closeHold(ctx.db, holdId, ctx.now, personOf(ctx), words);
      return {
        output: { words: `Hold closed: ${HOLD_WORDS[hold.reason]}.` },
        activity: [
          {
            subject: ['hold', holdId],
            ticket: hold.ticket_id,
            words: `Hold closed, ${HOLD_WORDS[hold.reason]}: ${words}`,
          },
        ],
        touched: [hold.ticket_id],
      };
    },
  },
  'floor/report-incident': {
    run({ castingId, kind, words, cause }, { db }) {
      const casting = castingId == null ? null : getCasting(db, castingId);
      const incident = insertIncident(db, {
        casting_id: casting?.id ?? null,
        ticket_id: casting?.ticket_id ?? null,
        kind,
        words,
        cause,
      });
      const said = `${INCIDENTS[kind]}${casting ? ` on ${casting.tag_no}` : ''} is written down. Tell the owner.`;
      return {
        output: { words: said, incidentId: incident },
        activity: [
          { subject: ['incident', incident], ticket: casting?.ticket_id ?? null, words: said, after: { words } },
        ],
        touched: casting ? [casting.ticket_id] : [],
      };
    },
  },
};

const INCIDENTS = { near_miss: 'The near miss', damage: 'The damage', injury: 'The injury' } as const;

type Reported = z.output<(typeof floorContract)['floor/report-finding']['input']>;

/** The person's own words, else those of the finding or condition chosen. */
function saidOf({ db }: Ctx, { words, findingKindId, conditionKindId }: Reported) {
  const kind = findingKindId == null ? null : findingKind(db, findingKindId);
  const seen = conditionKindId == null ? null : conditionWords(db, conditionKindId);
  const said = words ?? kind?.words ?? seen;
  if (said == null) throw badField('floor/no-finding', 'words', 'Say what you found: choose a finding or write it.');
  return { words: said, offers: kind?.offers ?? [] };
}

type Pictures = Readonly<{ photos: Reported['photos']; files: readonly StoredFile[] }>;

function keepPhotos({ db }: Ctx, casting: CastingRow, finding: FindingId, { photos, files }: Pictures): void {
  for (const [index, file] of files.entries()) {
    insertPhoto(db, {
      attachment_id: keepAttachment(db, file),
      ticket_id: casting.ticket_id,
      casting_id: casting.id,
      finding_id: finding,
      condition_mark_id: null,
      stage: 'finding',
      caption: photos[index]?.caption ?? null,
      taken_at: photos[index]?.takenAt ?? null,
    });
  }
}

type On = Readonly<{ ticket: TicketId; casting: CastingId | null; operation?: OpenHoldInput['operationId'] }>;

/** Exactly one of ticket, casting and operation. */
function placeOf({ db }: Ctx, { ticketId, castingId, operationId }: OpenHoldInput): On {
  if ([ticketId, castingId, operationId].filter((id) => id != null).length !== 1) {
    throw badField('floor/hold-on-what', 'castingId', 'A hold is on a ticket, a casting or an operation: choose one.');
  }
  if (operationId != null) {
    ticketOfOperation(db, operationId);
    const operation = getOperation(db, operationId);
    return { ticket: operation.ticket_id, casting: null, operation: operationId };
  }
  if (castingId != null) return { ticket: getCasting(db, castingId).ticket_id, casting: castingId };
  return { ticket: ticketId as TicketId, casting: null };
}

type HoldInput = Omit<OpenHoldInput, 'ticketId' | 'castingId' | 'operationId'>;

function openHold({ db, today }: Ctx, input: HoldInput, on: On) {
  const owner = input.ownerRole ?? HOLD_OWNERS[input.reason];
  // A lead looks the same day, the counter and the parts desk on the next open one. Common practice, no source.
  const usual = owner === 'lead' ? today : nextOpenDay(calendarOf(db), addDays(today, 1));
  return insertHold(db, {
    ticket_id: on.ticket,
    casting_id: on.operation == null ? on.casting : null,
    operation_id: on.operation ?? null,
    reason: input.reason,
    owner_role: owner,
    owner_id: input.ownerId ?? null,
    follow_up_on: input.followUpOn ?? usual,
    words: input.words,
  });
}

/** A crack or scrap decision on one of a pair asks the lead at once about the other. */
function otherOnes({ db }: Ctx, casting: CastingId, reason: HoldReason) {
  if (reason !== 'crack_or_scrap') return [];
  return listPair(db, casting).map((other) => ({
    castingId: other.id,
    tag: other.tag_no,
    question: `${other.tag_no} is the other one of the pair: hold it too, or go on?`,
  }));
}
