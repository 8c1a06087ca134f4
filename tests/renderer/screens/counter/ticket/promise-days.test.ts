import { describe, expect, it } from 'vitest';
import { day } from '#core/kernel/days.ts';
import { pointOf, ruleDays } from '#renderer/screens/counter/ticket/promise-days.ts';

const days = (...texts: string[]) => texts.map(day);

describe('ruleDays', () => {
  it('shows Monday to Friday from now to the promise', () => {
    // 12 March 2026 is a Thursday (ISO 8601 calendar).
    expect(ruleDays(days('2026-03-17', '2026-03-12'))).toEqual(
      days('2026-03-12', '2026-03-13', '2026-03-16', '2026-03-17'),
    );
  });

  it('keeps a Saturday that something stands on', () => {
    expect(ruleDays(days('2026-03-13', '2026-03-14'))).toEqual(days('2026-03-13', '2026-03-14'));
  });

  it('gives no rule for what would not fit, and none for nothing', () => {
    expect(ruleDays(days('2026-03-12', '2026-04-30'))).toBeNull();
    expect(ruleDays(days('2026-03-12', '2050-04-30'))).toBeNull();
    expect(ruleDays([])).toBeNull();
  });
});

describe('pointOf', () => {
  it('puts one in the afternoon in the middle of its day, and early and late at its ends', () => {
    const shown = days('2026-03-12', '2026-03-13');

    expect(pointOf(shown, { day: day('2026-03-13'), minute: 780 })).toEqual({ column: 1, part: 0.5 });
    expect(pointOf(shown, { day: day('2026-03-12'), minute: 0 })).toEqual({ column: 0, part: 0 });
    expect(pointOf(shown, { day: day('2026-03-12'), minute: 1439 })).toEqual({ column: 0, part: 1 });
    expect(pointOf(shown, { day: day('2026-03-16'), minute: 780 })).toBeUndefined();
  });
});
