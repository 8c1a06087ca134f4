import { describe, expect, it } from 'vitest';
import { releaseContract } from '#core/release/contract.ts';
import {
  EMPTY_RELEASE,
  leaving,
  outcomeOf,
  type ReleaseItem,
  type ReleasePage,
  type ReleaseRow,
  type ReleaseTyped,
  releaseInput,
  releaseMissing,
  wantsUnworked,
} from '#renderer/screens/racks/release/release-typed.ts';

const item = (changes: Partial<ReleaseItem> = {}) =>
  ({
    itemId: 7,
    words: 'valves',
    containerId: null,
    fate: null,
    missing: false,
    countNow: 16,
    expected: 16,
    ...changes,
  }) as ReleaseItem;
const row = (changes: Partial<ReleaseRow>) =>
  ({
    castingId: 1,
    containerId: null,
    label: '30874',
    piecesIn: 1,
    out: false,
    stops: [],
    items: [],
    ...changes,
  }) as ReleaseRow;

const head = row({ items: [item()] });
const box = row({ containerId: 5 as never, label: '30874-C', piecesIn: 2 });
const rows = [head, box];
const page = { ticketId: 3, rows } as unknown as ReleasePage;

const typed = (changes: Partial<ReleaseTyped>): ReleaseTyped => ({
  ...EMPTY_RELEASE,
  takenBy: 'R. Amari',
  proof: 'claim_ticket',
  ...changes,
});

describe('outcomeOf', () => {
  it('says all out, how many are short, and what nobody counted', () => {
    const said = typed({ out: { c1: 1, b5: 1 } });

    expect(outcomeOf(head, said, rows).words).toBe('all out');
    expect(outcomeOf(box, said, rows)).toEqual({ kind: 'short', words: '1 short', wantsWhy: true });
    expect(outcomeOf(box, EMPTY_RELEASE, rows).words).toBe('not counted');
  });

  it('wants a reason of a bag that stays only while its casting leaves', () => {
    expect(outcomeOf(box, typed({ out: { c1: 1, b5: 0 } }), rows).wantsWhy).toBe(true);
    expect(outcomeOf(box, typed({ out: { c1: 0, b5: 0 } }), rows).wantsWhy).toBe(false);
    expect(outcomeOf(box, typed({ out: { c1: 1, b5: 0 }, why: { b5: 'comes Monday' } }), rows).wantsWhy).toBe(false);
  });

  it('has done with what is out already', () => {
    expect(outcomeOf(row({ out: true }), EMPTY_RELEASE, rows).kind).toBe('gone');
  });
});

describe('releaseMissing', () => {
  const all = { c1: 1, b5: 2 };

  it('opens only when every line is counted or has a reason, and somebody signed', () => {
    expect(releaseMissing(rows, typed({ out: { c1: 1 } }), true)).toContain('every line');
    expect(releaseMissing(rows, typed({ out: { c1: 1, b5: 1 } }), true)).toContain('every line');
    expect(releaseMissing(rows, typed({ out: all }), false)).toContain('sign');
    expect(releaseMissing(rows, typed({ out: all }), true)).toBeUndefined();
  });

  it('asks who takes it, by which proof, and which paper', () => {
    expect(releaseMissing(rows, typed({ out: all, takenBy: ' ' }), true)).toBe('Write who takes it.');
    expect(releaseMissing(rows, typed({ out: all, proof: null }), true)).toBe('Choose by which proof.');
    expect(releaseMissing(rows, typed({ out: all, proof: 'identity' }), true)).toContain('which paper');
  });

  it('does not release nothing', () => {
    expect(releaseMissing(rows, typed({ out: { c1: 0, b5: 0 } }), true)).toBe('Nothing is counted out.');
  });
});

describe('releaseInput', () => {
  const parse = (said: ReleaseTyped, of = page) =>
    releaseContract['racks/release-goods'].input.safeParse(releaseInput(of, said, { sha256: null, onPaper: true }));

  it('sends castings, bags with their count and reason, and ends of pieces', () => {
    const parsed = parse(
      typed({
        out: { c1: 1, b5: 1 },
        why: { b5: 'one box is theirs already' },
        items: { 7: { count: null, fate: 'in_casting', why: '' } },
      }),
    );

    expect(parsed.error).toBeUndefined();
    expect(parsed.data).toMatchObject({
      castings: [1],
      containers: [{ containerId: 5, counted: 1, explained: 'one box is theirs already' }],
      items: [{ itemId: 7, count: 16, fate: 'in_casting', explained: null }],
      stays: [],
      signedOnPaper: true,
    });
  });

  it('names the bag that stays, with its reason, and leaves out a piece nobody spoke of', () => {
    expect(parse(typed({ out: { c1: 1, b5: 0 }, why: { b5: 'gasket set comes Monday' } })).data).toMatchObject({
      containers: [],
      items: [],
      stays: [{ containerId: 5, why: 'gasket set comes Monday' }],
    });
  });

  it('sends why it leaves unworked only for a casting that is not signed off', () => {
    const stopped = row({ stops: ['30874 is not signed off. Sign it off, or write why it leaves unworked.'] });
    const said = typed({ out: { c1: 1 }, unworkedWhy: 'too dear for them' });

    expect(wantsUnworked([stopped], said)).toBe(true);
    expect(parse(said, { ticketId: 3, rows: [stopped] } as unknown as ReleasePage).data?.unworkedWhy).toBe(
      'too dear for them',
    );
    expect(parse(said).data?.unworkedWhy).toBeNull();
  });
});

describe('leaving', () => {
  it('is what is counted out above none and not gone before', () => {
    expect(
      leaving([head, box, row({ castingId: 2 as never, out: true })], typed({ out: { c1: 1, b5: 0, c2: 1 } })),
    ).toEqual([head]);
  });
});
