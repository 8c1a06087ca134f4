/** Pictures of castings and pieces. Never deleted; one that should not be seen is hidden with a reason. */
import { z } from 'zod';
import { command, query } from '../kernel/contract.ts';
import { idOf, MomentSchema, optionalWords, words } from '../kernel/schemas.ts';

const PHOTO_STAGES = ['arrival', 'finding', 'done'] as const;

/** A file: its SHA-256 when it was sent to the host before, or its bytes as base64. The host hashes and looks inside. */
export const FileInput = z.union([
  z.strictObject({ sha256: z.string().regex(/^[0-9a-f]{64}$/, 'Send the picture again.') }),
  z.strictObject({
    base64: z
      .string()
      .min(1, 'The picture is empty. Choose another file.')
      .max(40_000_000, 'The picture is too big. Keep it under 30 MB.')
      .regex(/^[A-Za-z0-9+/]+={0,2}$/, 'The picture did not arrive whole. Send it again.'),
    mime: words(80, 'the kind of file'),
  }),
]);

const PhotoView = z.object({
  photoId: idOf<'photo'>(),
  /** The picture is read from the host's file address by this. */
  sha256: z.string(),
  mime: z.string(),
  width: z.int().nullable(),
  height: z.int().nullable(),
  ticketId: idOf<'ticket'>(),
  castingId: idOf<'casting'>().nullable(),
  tagNo: z.int().nullable(),
  findingId: idOf<'finding'>().nullable(),
  conditionMarkId: idOf<'condition_mark'>().nullable(),
  stage: z.enum(PHOTO_STAGES),
  stageWords: z.string(),
  caption: z.string().nullable(),
  takenAt: MomentSchema.nullable(),
  keptAt: MomentSchema,
  by: z.string(),
});

export const photosContract = {
  'photos/add-photo': command({
    may: 'floor:work',
    secret: ['file'],
    input: z.strictObject({
      ticketId: idOf<'ticket'>(),
      castingId: idOf<'casting'>().nullable().default(null),
      findingId: idOf<'finding'>().nullable().default(null),
      conditionMarkId: idOf<'condition_mark'>().nullable().default(null),
      stage: z.enum(PHOTO_STAGES).default('arrival'),
      caption: optionalWords(240, 'the caption'),
      takenAt: MomentSchema.nullable().default(null),
      file: FileInput,
    }),
    output: z.object({
      photoId: idOf<'photo'>(),
      sha256: z.string(),
      width: z.int().nullable(),
      height: z.int().nullable(),
    }),
  }),
  /** Keep a signed paper or another file that is no picture of a casting (proof of an answer, a standing instruction). */
  'photos/keep-proof': command({
    may: 'floor:work',
    secret: ['file'],
    input: z.strictObject({ file: FileInput, words: words(240, 'what it is') }),
    output: z.object({ attachmentId: idOf<'attachment'>(), sha256: z.string() }),
  }),
  /** Newest first; hidden ones left out. */
  'photos/list-photos': query({
    may: 'floor:see',
    input: z.union([
      z.strictObject({ ticketId: idOf<'ticket'>() }),
      z.strictObject({ castingId: idOf<'casting'>() }),
      z.strictObject({ findingId: idOf<'finding'>() }),
    ]),
    output: z.object({ photos: z.array(PhotoView) }),
  }),
  'photos/hide-photo': command({
    may: 'floor:work',
    input: z.strictObject({ photoId: idOf<'photo'>(), why: words(240, 'why it is hidden') }),
    output: z.object({}),
  }),
} as const;
