/** Counting out as typed, what each line has come to in words, and how it becomes the request. Pure. */
import type { App } from '#core/app-contract.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';

export type ReleasePage = OutputOf<App['racks/get-release']>;
export type ReleaseRow = ReleasePage['rows'][number];
export type ReleaseItem = ReleaseRow['items'][number];
type ReleaseInput = InputOf<App['racks/release-goods']>;
export type Fate = NonNullable<ReleaseInput['items']>[number]['fate'];
export type Proof = ReleaseInput['proof'];

type ItemSaid = Readonly<{ count: number | null; fate: Fate | null; why: string }>;

export type ReleaseTyped = Readonly<{
  /** Counted out, by `rowKey`; a line that is missing here is not counted. */
  out: Readonly<Record<string, number | null>>;
  /** Why it stays or is short, by `rowKey`. */
  why: Readonly<Record<string, string>>;
  /** Ends of single pieces, by item. */
  items: Readonly<Record<string, ItemSaid>>;
  takenBy: string;
  personId: number | null;
  proof: Proof | null;
  proofWords: string;
  unworkedWhy: string;
}>;

/** Takes over what a part of the page changed. */
export type Change = (changes: Partial<ReleaseTyped>) => void;

export const EMPTY_RELEASE: ReleaseTyped = {
  out: {},
  why: {},
  items: {},
  takenBy: '',
  personId: null,
  proof: null,
  proofWords: '',
  unworkedWhy: '',
};

export const isRelease = (value: unknown): value is ReleaseTyped =>
  typeof value === 'object' && value !== null && Object.keys(EMPTY_RELEASE).every((key) => key in value);

/** A line of the count: a bag by itself, a casting by itself. */
export const rowKey = (row: Pick<ReleaseRow, 'castingId' | 'containerId'>): string =>
  row.containerId === null ? `c${row.castingId}` : `b${row.containerId}`;

/** What a line has come to. `short` and `stays` of a bag want a reason while its casting leaves. */
export type Outcome = Readonly<{ kind: 'gone' | 'all' | 'short' | 'stays' | 'open'; words: string; wantsWhy: boolean }>;

export function outcomeOf(row: ReleaseRow, typed: ReleaseTyped, rows: readonly ReleaseRow[]): Outcome {
  if (row.out) return { kind: 'gone', words: 'out already', wantsWhy: false };
  const counted = typed.out[rowKey(row)] ?? null;
  const said = (typed.why[rowKey(row)] ?? '').trim() !== '';
  if (counted === null && !said) return { kind: 'open', words: 'not counted', wantsWhy: false };
  if (counted !== null && counted >= row.piecesIn) return { kind: 'all', words: 'all out', wantsWhy: false };
  if (counted === null || counted === 0) {
    return { kind: 'stays', words: 'stays', wantsWhy: !said && isBag(row) && castingLeaves(row, typed, rows) };
  }
  return { kind: 'short', words: `${row.piecesIn - counted} short`, wantsWhy: !said };
}

const isBag = (row: ReleaseRow): boolean => row.containerId !== null;

const castingLeaves = (bag: ReleaseRow, typed: ReleaseTyped, rows: readonly ReleaseRow[]): boolean =>
  rows.some((row) => !isBag(row) && row.castingId === bag.castingId && leaves(row, typed));

const leaves = (row: ReleaseRow, typed: ReleaseTyped): boolean => !row.out && (typed.out[rowKey(row)] ?? 0) > 0;

/** Lines that leave now. */
export const leaving = (rows: readonly ReleaseRow[], typed: ReleaseTyped): readonly ReleaseRow[] =>
  rows.filter((row) => leaves(row, typed));

/** A casting that leaves and is not signed off wants a written reason. */
export const wantsUnworked = (rows: readonly ReleaseRow[], typed: ReleaseTyped): boolean =>
  leaving(rows, typed).some((row) => !isBag(row) && row.stops.some((stop) => stop.includes('not signed off')));

/** Pieces of a casting whose end nobody has said, and which lie in no bag. */
export const openItems = (row: ReleaseRow): readonly ReleaseItem[] =>
  row.out ? [] : row.items.filter((item) => item.containerId === null && item.fate === null && !item.missing);

/** Why the go button is shut, or undefined. */
export function releaseMissing(rows: readonly ReleaseRow[], typed: ReleaseTyped, signed: boolean): string | undefined {
  const outcomes = rows.map((row) => outcomeOf(row, typed, rows));
  if (outcomes.some((one) => one.kind === 'open' || one.wantsWhy)) {
    return 'Opens when every line is counted or has a reason.';
  }
  if (leaving(rows, typed).length === 0) return 'Nothing is counted out.';
  if (typed.takenBy.trim() === '') return 'Write who takes it.';
  if (typed.proof === null) return 'Choose by which proof.';
  if (typed.proof === 'identity' && typed.proofWords.trim() === '') return 'Write which paper they showed.';
  return signed ? undefined : 'Let them sign after the count, here or on paper.';
}

type Signed = Readonly<{ sha256: string | null; onPaper: boolean }>;

/** The request. Lines that stay and need no reason are left out. */
export function releaseInput(page: ReleasePage, typed: ReleaseTyped, signed: Signed): ReleaseInput {
  const { rows } = page;
  const why = (row: ReleaseRow) => (typed.why[rowKey(row)] ?? '').trim() || null;
  const out = leaving(rows, typed);
  return {
    ticketId: page.ticketId,
    castings: out.flatMap((row) => (isBag(row) || row.castingId === null ? [] : [row.castingId])),
    containers: out.flatMap((row) =>
      row.containerId === null
        ? []
        : [{ containerId: row.containerId, counted: typed.out[rowKey(row)] ?? null, explained: why(row) }],
    ),
    items: out.flatMap((row) => openItems(row).flatMap((item) => itemInput(item, typed.items[item.itemId]))),
    stays: rows.flatMap((row) => {
      const reason = why(row);
      const stays = row.containerId !== null && !row.out && !leaves(row, typed);
      return stays && row.containerId !== null && reason !== null
        ? [{ containerId: row.containerId, why: reason }]
        : [];
    }),
    takenBy: typed.takenBy,
    personId: typed.personId,
    proof: typed.proof ?? ('' as Proof),
    proofWords: typed.proofWords.trim() || null,
    signedOnPaper: signed.onPaper,
    signatureFile: signed.sha256 === null ? null : { sha256: signed.sha256 },
    unworkedWhy: wantsUnworked(rows, typed) ? typed.unworkedWhy.trim() || null : null,
  };
}

function itemInput(item: ReleaseItem, said: ItemSaid | undefined): NonNullable<ReleaseInput['items']> {
  if (!said?.fate) return [];
  const count = said.count ?? item.countNow ?? item.expected ?? 0;
  return [{ itemId: item.itemId, count, fate: said.fate, explained: said.why.trim() || null }];
}
