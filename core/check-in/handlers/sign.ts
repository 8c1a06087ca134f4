/** The signature under the list of pieces and conditions. */
import type { Ctx, Handlers, PrepareCtx } from '../../host/implement.ts';
import { keptPicture } from '../../host/kept-file.ts';
import type { StoredFile } from '../../host/services.ts';
import { badField, ruleBroken } from '../../kernel/errors.ts';
import type { TicketId } from '../../kernel/ids.ts';
import { keepAttachment } from '../../photos/store.ts';
import { getTicket, type TicketRow } from '../../tickets/store.ts';
import type { checkInContract } from '../contract.ts';

export type Signed = Readonly<{ how: 'drawn' | 'on_paper' | 'left_unsigned'; by: string | null }>;

const WORDS = { drawn: 'Signed on the screen', on_paper: 'Signed on paper', left_unsigned: 'Left unsigned' } as const;
export const signedWords = ({ how, by }: Signed): string => (by === null ? WORDS[how] : `${WORDS[how]} by ${by}`);

/** Check a signature before anything is written. @throws AppError `invalid-input` when drawn and not sent */
export function refuseNoDrawing(signed: Signed | null, file: StoredFile | null): void {
  if (signed?.how === 'drawn' && file === null) {
    throw badField(
      'check-in/no-signature',
      'signatureFile',
      'The signature is empty. Sign again, or choose “signed on paper”.',
    );
  }
}

/** Write how the list was signed. From then on its conditions are locked (left unsigned: from the first operation). */
export function sign(ctx: Ctx, ticket: TicketId, signed: Signed, file: StoredFile | null): void {
  const row = getTicket(ctx.db, ticket);
  ctx.db.step('ticket', ticket, row.version, {
    signed_how: signed.how,
    signed_by: signed.by,
    claim_signed_at: signed.how === 'left_unsigned' ? null : ctx.now,
    claim_signature_id: file === null ? null : keepAttachment(ctx.db, file),
  });
}

const refuseSigned = (row: TicketRow): void => {
  if (row.signed_how === 'drawn' || row.signed_how === 'on_paper') {
    throw ruleBroken(
      'check-in/signed',
      `Ticket ${row.number} is signed already. What is seen later is added as a finding.`,
    );
  }
};

export const signing: Pick<Handlers<typeof checkInContract>, 'intake/sign-claim'> = {
  'intake/sign-claim': {
    prepare: async ({ signatureFile }, { services }: PrepareCtx) =>
      signatureFile === null ? null : keptPicture(signatureFile, services, 'signatureFile'),
    run({ ticketId, how, signedBy }, ctx, file: StoredFile | null) {
      const row = getTicket(ctx.db, ticketId);
      refuseSigned(row);
      const signed = { how, by: signedBy };
      refuseNoDrawing(signed, file);
      sign(ctx, ticketId, signed, file);
      const words = signedWords(signed);
      return {
        output: { locked: how !== 'left_unsigned', words },
        activity: [
          {
            subject: ['ticket', ticketId],
            ticket: ticketId,
            words: `${words}: the list of ticket ${row.number}`,
            after: signed,
          },
        ],
        touched: [ticketId],
      };
    },
  },
};
