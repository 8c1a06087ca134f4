/**
 * What a printed code says: `BT `, one kind letter, and the number printed beside it, for example `BT C41170`.
 *
 * The letters are listed here once. A code never holds anything that is not printed beside it.
 */
export const CODE_LETTERS = {
  ticket: 'T',
  casting: 'C',
  /** A bag, tray, board, box: anything that holds pieces of a casting. */
  container: 'B',
  place: 'P',
  estimate: 'E',
  'added-work': 'A',
  invoice: 'I',
  receipt: 'R',
  release: 'L',
} as const;

export type CodeKind = keyof typeof CODE_LETTERS;

const PREFIX = 'BT ';

/** The text of a code. */
export const codeText = (kind: CodeKind, number: string): string => `${PREFIX}${CODE_LETTERS[kind]}${number}`;

/** What a code reader sent, taken apart; undefined when it is none of ours. Readers that send lower case are understood. */
export function readCode(text: string): { kind: CodeKind; number: string } | undefined {
  const found = /^BT ([A-Z])(.+)$/.exec(text.trim().toUpperCase());
  const letter = found?.[1];
  const number = found?.[2];
  if (letter === undefined || number === undefined) return undefined;
  const kind = (Object.keys(CODE_LETTERS) as CodeKind[]).find((name) => CODE_LETTERS[name] === letter);
  return kind && { kind, number };
}
