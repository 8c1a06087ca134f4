import { describe, expect, it } from 'vitest';
import { stageNow } from '#renderer/screens/bench/bench-casting.ts';
import { operationOf } from './castings.ts';

const need = (done: number, of: number, table: string | null) => ({ done, of, words: '', table });
const running = { running: [{}] } as unknown as Parameters<typeof operationOf>[2];

describe('stageNow', () => {
  it('is after while the work runs that reads this table when it is done', () => {
    const cut = operationOf(4, 'surface', { ...running, after: need(0, 1, 'surfacing') });
    expect(stageNow(cut, 'surfacing')).toBe('after');
    expect(stageNow(cut, 'heights')).toBeNull();
  });

  it('is open before the work runs, without work, and while something is wanted before it', () => {
    const after = need(0, 1, 'surfacing');
    expect(stageNow(operationOf(4, 'surface', { after }), 'surfacing')).toBeNull();
    expect(stageNow(null, 'surfacing')).toBeNull();
    const wanting = operationOf(4, 'surface', { ...running, before: need(0, 1, 'surfacing'), after });
    expect(stageNow(wanting, 'surfacing')).toBeNull();
    expect(stageNow({ ...wanting, before: need(1, 1, 'surfacing') }, 'surfacing')).toBe('after');
  });
});
