/** The one error that reaches a person. Anything else that is thrown is our bug and shows a reference only. */

export const ERROR_KINDS = [
  'invalid-input',
  'rule-broken',
  'not-found',
  'conflict',
  'not-allowed',
  'unavailable',
  'bug',
] as const;

/**
 * Who can mend it: `invalid-input` the person, in a field; `rule-broken` the person, by another step; `not-found` by going
 * back; `conflict` by looking again; `not-allowed` somebody with the right; `unavailable` time or the machine; `bug` us.
 */
export type ErrorKind = (typeof ERROR_KINDS)[number];

/** One way on that the screen may offer as a button: a request to send, or words only. */
export type ErrorOffer = Readonly<{ words: string; request?: string; input?: unknown }>;

export type ErrorDetails = Readonly<{
  /** Sentence by input path, for example `castings.0.material`. */
  fields?: Readonly<Record<string, string>>;
  /** What does fit instead, at most a few. */
  offers?: readonly ErrorOffer[];
  /** Facts a screen may show, for example who changed what. */
  facts?: Readonly<Record<string, unknown>>;
  cause?: unknown;
}>;

export class AppError extends Error {
  override readonly name = 'AppError';
  readonly kind: ErrorKind;
  /** `feature/what-is-wrong`; tests and screens match this, never the message. */
  readonly code: string;
  readonly details: ErrorDetails;

  constructor(kind: ErrorKind, code: string, message: string, details: ErrorDetails = {}) {
    super(message, details.cause === undefined ? undefined : { cause: details.cause });
    this.kind = kind;
    this.code = code;
    this.details = details;
  }
}

/** Shorthand for a rule of the trade or the shop that says no. */
export const ruleBroken = (code: string, message: string, details?: ErrorDetails): AppError =>
  new AppError('rule-broken', code, message, details);

/** Shorthand for a bad value in one field. */
export const badField = (code: string, field: string, message: string, details: ErrorDetails = {}): AppError =>
  new AppError('invalid-input', code, message, { ...details, fields: { ...details.fields, [field]: message } });

/** Shorthand for a thing that is not there. `what` opens the sentence: "Ticket 10482". */
export const notFound = (code: string, what: string): AppError =>
  new AppError('not-found', code, `${what} is not here. Check the number, or go back.`);
