import { describe, expect, it } from 'vitest';
import { centreView, tagView, who } from '#core/floor/handlers/views.ts';
import type { Day, Moment } from '#core/kernel/days.ts';

describe('who', () => {
  it('is nobody when nobody is named', () => {
    expect(who(null, 'KT', 'K. T.')).toBeNull();
    expect(who(4 as never, 'KT', null)).toEqual({ staff: 4, initials: 'KT', name: '' });
  });
});

describe('centreView', () => {
  it('keeps what is not approved to itself', () => {
    const view = centreView({
      id: 1 as never,
      code: 'hone',
      name: 'Hone',
      outside: false,
      running: 1,
      ready: 2,
      waiting: 0,
      held: 0,
      asked: 4,
      castings: 3,
      aheadSeconds: 5400,
    });
    expect(view.words).toBe('3 castings, 1.5 h ahead');
    expect(view).not.toHaveProperty('asked');
  });
});

describe('tagView', () => {
  const row = {
    tag_no: 41170,
    kind: 'head',
    material: 'aluminium',
    metal_confirmed_at: '2026-03-09T14:00:00.000Z' as Moment,
    next_words: null,
    centre: null,
    slot: 'held',
    promised_on: '2026-03-10',
    promised_minute: 1020,
    ready: 1,
  } as never;

  it('says ready where no work is left, and is not late then', () => {
    expect(tagView(row, { day: '2026-03-12' as Day, minute: 0 })).toMatchObject({
      next: 'ready',
      held: true,
      late: false,
    });
  });
});
