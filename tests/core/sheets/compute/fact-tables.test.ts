import { describe, expect, it } from 'vitest';
import { id } from '#core/kernel/ids.ts';
import { factTables } from '#core/sheets/compute/fact-tables.ts';
import { limitOf, readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import { benchRow, measuredOf, plainSheet, tableOf } from '#tests/kit/measured-facts.ts';

const once = { spotKind: null } as const;
const surface = tableOf(
  [benchRow('thickness', { stage: 'before' }), benchRow('thickness'), benchRow('stock-removed'), benchRow('finish-ra')],
  { ...once, code: 'faces', words: 'Faces' },
);
const thickness = (typed: string, words: object = {}) => readingOf('thickness', typed, 'in', words);
const before = { stage: 'before' } as const;

describe('factTables', () => {
  it('puts found and after side by side, both units, the limit below the words (exact mathematics)', () => {
    const [table] = factTables(
      measuredOf(
        {
          limits: [limitOf('thickness', 'in', { low: '2.925' })],
          readings: [thickness('2.942', before), thickness('2.938')],
        },
        [surface],
      ),
      plainSheet(),
    );

    expect(table?.rows).toMatchObject([
      {
        words: 'Thickness',
        small: 'limit at least 2.925 in',
        // 2.942 in and 2.938 in times 25.4.
        found: { text: '2.942 in', other: '74.73 mm' },
        after: { text: '2.938 in', other: '74.63 mm' },
        strong: true,
      },
      { words: 'Taken off', found: null, after: { text: '0.0040 in', other: '0.102 mm' } },
    ]);
  });

  it('says how a finish was found: compared with a card is not measured', () => {
    const [table] = factTables(
      measuredOf({ readings: [readingOf('finish-ra', '60', 'uin', { mark: 'compared' })] }, [surface]),
      plainSheet(),
    );

    expect(table?.rows).toMatchObject([
      { words: 'Finish Ra', small: 'compared with a card', after: { text: '60 µin' } },
    ]);
  });

  it('keeps what was replaced, struck, with who and why', () => {
    const old = thickness('2.936');
    const [table] = factTables(
      measuredOf({ readings: [old, thickness('2.938', { supersedes: old.id, reason: 'burr under the anvil' })] }, [
        surface,
      ]),
      plainSheet(),
    );

    expect(table?.rows[0]?.after).toMatchObject({ text: '2.938 in', struck: '2.936' });
    expect(table?.rows[0]?.small).toContain('replaced 2026-03-09 by Teodor Vaskelund: burr under the anvil');
  });

  it('says the first run of what was done again', () => {
    const [one, two] = [id<'operation'>(1), id<'operation'>(2)];
    const [table] = factTables(
      measuredOf(
        { readings: [thickness('2.940', { operation: one }), thickness('2.938', { operation: two })] },
        [surface],
        { redone: new Set([two]) },
      ),
      plainSheet(),
    );

    expect(table?.rows[0]).toMatchObject({ small: 'first run 2.940 in', after: { text: '2.938 in' } });
  });

  it('combines the doubts of a computed figure on a certified sheet (root of the sum of squares)', () => {
    const tool = toolOf({ uncertainty: 2540 });
    const [table] = factTables(
      measuredOf(
        {
          tools: [tool],
          readings: [thickness('2.942', { ...before, tool: tool.id }), thickness('2.938', { tool: tool.id })],
        },
        [surface],
      ),
      { ...plainSheet(), certified: true },
    );

    expect(table?.rows.map(({ after }) => after?.doubt)).toEqual(['±0.0001', '±0.00015']);
  });

  it('prints a figure of two tables once, and none that only the catalogue gives', () => {
    const again = tableOf([benchRow('thickness'), benchRow('gasket-volume')], {
      ...once,
      code: 'again',
      words: 'Again',
    });
    const limits = [
      limitOf('gasket-bore', 'in', { target: '4.000' }),
      limitOf('gasket-thickness', 'in', { target: '.040' }),
    ];

    const tables = factTables(measuredOf({ limits, readings: [thickness('2.938')] }, [surface, again]), plainSheet());

    expect(tables.map(({ heading }) => heading)).toEqual(['Faces']);
  });

  it('names what is missing where a figure cannot be said', () => {
    const effects = tableOf([benchRow('head-cut'), benchRow('compression-ratio')], {
      ...once,
      code: 'x',
      words: 'Effects',
    });
    const [table] = factTables(
      measuredOf({ readings: [thickness('2.942', before), thickness('2.938')] }, [effects]),
      plainSheet(),
    );
    const missing = table?.notes.find(({ label }) => label === 'Not known:');

    expect(table?.rows.map(({ words, after }) => [words, after?.text])).toEqual([['Off the head', '0.0040 in']]);
    expect(missing?.words).toContain('compression ratio (');
  });

  it('marks what fails with its word', () => {
    const [table] = factTables(
      measuredOf({ limits: [limitOf('thickness', 'in', { low: '2.940' })], readings: [thickness('2.938')] }, [surface]),
      plainSheet(),
    );

    expect(table?.rows[0]?.after).toMatchObject({ verdict: 'under', word: 'too thin' });
  });

  it('says small print of several figures once, with a number', () => {
    const limits = [
      limitOf('deck-clearance', 'in', { target: '.020' }),
      limitOf('gasket-bore', 'in', { target: '4.1' }),
    ];
    const shared = tableOf([benchRow('thickness-left'), benchRow('stock-removed')], {
      ...once,
      code: 'y',
      words: 'Left',
    });
    const marked = { note: 'measured cold' };
    const [table] = factTables(
      measuredOf(
        {
          limits,
          readings: [
            thickness('2.942', { ...before, ...marked }),
            thickness('2.938', marked),
            readingOf('deck-flatness', '.001', 'in', marked),
          ],
        },
        [tableOf([benchRow('thickness'), benchRow('deck-flatness')], { ...once, code: 'z', words: 'Cold' }), shared],
      ),
      plainSheet(),
    );

    expect(table?.rows.map(({ small }) => small)).toEqual(['note 1', 'note 1']);
    expect(table?.notes[0]).toEqual({ label: '1', words: 'measured cold.' });
  });
});
