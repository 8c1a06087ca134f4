import { describe, expect, it } from 'vitest';
import { RequestRefused } from '#renderer/client/request-refused.ts';
import { changesOf, conflictsOf } from '#renderer/screens/counter/ticket/field-changes.ts';

describe('changesOf', () => {
  it('sends only what was changed, with what was seen; a field wiped clean is nothing', () => {
    const seen: Record<string, string | null> = {
      orderNumber: '7731',
      useWords: null,
      gasket: 'mls',
      notes: 'ring first',
    };

    expect(changesOf(seen, { ...seen, orderNumber: '7732', useWords: '', notes: '' })).toEqual({
      orderNumber: { seen: '7731', to: '7732' },
      notes: { seen: 'ring first', to: null },
    });
  });
});

describe('conflictsOf', () => {
  it('reads the fields two people changed, and none from another refusal', () => {
    const conflict = { field: 'notes', words: 'the notes', now: 'his', yours: 'mine', by: 'Teodor' };
    const error = new RequestRefused({
      kind: 'conflict',
      code: 'host/changed-meanwhile',
      message: '',
      facts: { conflicts: [conflict] },
    });

    expect(conflictsOf(error)).toEqual([conflict]);
    expect(conflictsOf(new RequestRefused({ kind: 'bug', code: 'host/bug', message: '' }))).toEqual([]);
    expect(conflictsOf(null)).toEqual([]);
  });
});
