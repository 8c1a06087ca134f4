import { describe, expect, it } from 'vitest';
import { id } from '#core/kernel/ids.ts';
import type { LimitShown } from '#core/readings/compute/sheet-model.ts';
import {
  GUARD_RULE,
  limitWords,
  markNotes,
  marksOf,
  missingNotes,
  otherNotes,
  sourceNotes,
} from '#core/sheets/compute/table-notes.ts';
import { limitOf, readingOf } from '#tests/kit/bench-facts.ts';
import { benchRow, measuredOf, tableOf } from '#tests/kit/measured-facts.ts';

const [one, two] = [id<'spot'>(1), id<'spot'>(2)];
const sheetOf = (facts: Parameters<typeof measuredOf>[0], rows: Parameters<typeof tableOf>[0], code = 'trial') => {
  const [sheet] = measuredOf(facts, [tableOf(rows, { code })]).sheets;
  if (!sheet) throw new Error('no sheet');
  return sheet;
};
const rows = [benchRow('stem'), benchRow('margin')];
const readings = [readingOf('stem', '.3412', 'in', { spot: one }), readingOf('margin', '.050', 'in', { spot: two })];

describe('sourceNotes', () => {
  it('says one source once, and several each with what it counts for', () => {
    const same = sheetOf({ readings, limits: [limitOf('stem', 'in', { low: '.3410' })] }, rows);
    const two = sheetOf(
      {
        readings,
        limits: [
          limitOf('stem', 'in', { low: '.3410' }),
          limitOf('margin', 'in', { low: '.047', sourceWords: 'customer’s letter', checked: false }),
        ],
      },
      rows,
    );

    expect(sourceNotes(same.rows)).toEqual([{ label: 'Limits', words: 'casting type sheet.' }]);
    expect(sourceNotes(two.rows)).toEqual([
      {
        label: 'Limits',
        words: 'valve stem: casting type sheet; margin: customer’s letter, not checked by a second person.',
      },
    ]);
  });

  it('says that no limit is known', () => {
    expect(sourceNotes(sheetOf({ readings }, rows).rows)).toEqual([{ label: 'Limits', words: 'no limit known.' }]);
    expect(sourceNotes([])).toEqual([]);
  });
});

describe('limitWords', () => {
  it.each([
    ['any', '1.690 – 1.710', null, '1.690 – 1.710'],
    ['I', 'at most .0040', null, 'I at most .0040'],
    ['any', '', '1.700', 'target 1.700'],
  ] as const)('says side %s, limit "%s", target %s', (side, text, targetText, words) => {
    expect(limitWords({ side, text, targetText } as LimitShown)).toBe(words);
  });
});

describe('markNotes', () => {
  it('names the places where a mark does not count for all', () => {
    const sheet = sheetOf(
      {
        readings: [
          readingOf('stem', '.3412', 'in', { spot: one, note: 'worn on one side' }),
          readingOf('stem', '.3415', 'in', { spot: two }),
        ],
      },
      rows,
    );

    expect(markNotes(sheet, sheet.rows)).toEqual([{ label: 'Valve stem:', words: 'worn on one side at 1E.' }]);
  });
});

describe('marksOf', () => {
  it('leaves to the bench how a figure was typed, and tells the builder of a card', () => {
    const marks = (mark: 'implied' | 'last_digits' | 'from_tool' | 'compared') => {
      const cell = sheetOf({ readings: [readingOf('stem', '.3412', 'in', { spot: one, mark })] }, rows).rows[0]
        ?.cells[0];
      return cell && marksOf(cell);
    };

    expect([marks('implied'), marks('last_digits'), marks('from_tool')]).toEqual([[], [], []]);
    expect(marks('compared')).toEqual(['compared with a card']);
  });
});

describe('missingNotes', () => {
  const [row] = sheetOf({ readings }, rows).rows;
  const [cell] = row?.cells ?? [];
  const missing = (words: string, why: string, more: object = {}) => {
    if (!row || !cell) throw new Error('no row');
    const empty = { ...cell, state: 'not measured' as const, text: '', marks: [why] };
    return { ...row, words, derived: true, shown: true, cells: [empty], ...more };
  };

  it('says each reason once, with all that waits for it', () => {
    expect(
      missingNotes([
        missing('ratio', 'not known: chamber volume'),
        missing('cam late by', 'no overhead cam'),
        missing('ratio, change', 'not known: chamber volume'),
      ]),
    ).toEqual([
      { label: 'Not known:', words: 'ratio, ratio, change (chamber volume); cam late by (no overhead cam).' },
    ]);
  });

  it('asks for nothing that is read or hidden', () => {
    expect(missingNotes([missing('a', 'why', { derived: false }), missing('b', 'why', { shown: false })])).toEqual([]);
  });
});

describe('otherNotes', () => {
  it('says a sentence once on a whole sheet of paper, and leaves the cautions of the bench there', () => {
    const sheet = sheetOf(
      { readings: [readingOf('insert-od', '1.500', 'in', { spot: one })] },
      [benchRow('insert-od')],
      'insert-fits',
    );
    const said = new Set<string>();
    const late = { ...sheet, notes: [...sheet.notes, 'G07: check was due 2026-01-01.'] };

    expect(sheet.notes.length).toBeGreaterThan(0);
    expect(otherNotes(late, said)).toEqual([{ label: '', words: 'G07: check was due 2026-01-01.' }]);
    expect(otherNotes(late, said)).toEqual([]);
  });
});

describe('GUARD_RULE', () => {
  it('says the rule and the cover of its uncertainty (ISO 14253-1 as summarised publicly; k = 2 from memory)', () => {
    expect(GUARD_RULE).toMatch(/passes only if .* inside .* too close to call and is not a pass/);
    expect(GUARD_RULE).toContain('k = 2');
  });
});
