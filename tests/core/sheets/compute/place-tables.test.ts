import { describe, expect, it } from 'vitest';
import { QUANTITIES } from '#core/catalogue/compute/quantities.ts';
import { quantity, valve } from '#core/catalogue/compute/quantity.ts';
import { id } from '#core/kernel/ids.ts';
import { letterAt, placeTables } from '#core/sheets/compute/place-tables.ts';
import { limitOf, readingOf, toolOf } from '#tests/kit/bench-facts.ts';
import { benchRow, measuredOf, plainSheet, tableOf } from '#tests/kit/measured-facts.ts';

const [one, two] = [id<'spot'>(1), id<'spot'>(2)];
const height = (typed: string, spot: typeof one, words: object = {}) =>
  readingOf('installed-height', typed, 'in', { spot, ...words });
const heights = tableOf([
  benchRow('installed-height', { stage: 'before' }),
  benchRow('margin'),
  benchRow('installed-height'),
]);
const limits = [limitOf('installed-height', 'in', { low: '1.690', high: '1.710', sourceTag: '[demo]' })];

describe('placeTables', () => {
  it('puts what was found directly above what stands after, each with its own limit', () => {
    const readings = [
      height('1.731', one, { stage: 'before' }),
      height('1.720', two, { stage: 'before' }),
      height('1.701', one),
      height('1.699', two),
    ];
    const [table] = placeTables(measuredOf({ limits, readings }, [heights]), plainSheet());

    expect(table?.rows).toMatchObject([
      { label: 'Height read, in', stage: 'found', values: ['1.731', '1.720'], limit: '' },
      { label: 'Height read, in', stage: 'after', again: true, values: ['1.701', '1.699'], limit: '1.690 – 1.710' },
    ]);
    expect(table?.notes).toContainEqual({ label: 'Limits', words: 'casting type sheet [demo].' });
  });

  it('says both at once where work changed nothing', () => {
    const readings = [height('1.701', one, { stage: 'before' }), height('1.701', one)];
    const [table] = placeTables(measuredOf({ limits, readings }, [heights]), plainSheet());

    expect(table?.rows.map(({ stage, values }) => [stage, values])).toEqual([['found, after', ['1.701', '']]]);
  });

  it('gives no pass mark while a figure is missing, and says how many are', () => {
    const [part] = placeTables(measuredOf({ limits, readings: [height('1.701', one)] }, [heights]), plainSheet());
    const [whole] = placeTables(
      measuredOf({ limits, readings: [height('1.701', one), height('1.699', two)] }, [heights]),
      plainSheet(),
    );

    expect(part).not.toHaveProperty('verdict');
    expect(part?.verdictWords).toBe('Figures with a limit: 1 pass, 1 not measured.');
    expect(whole).toMatchObject({ verdict: 'pass', verdictWords: 'Figures with a limit: 2 pass.' });
  });

  it('marks what does not pass, and names who let it', () => {
    const decisions = [
      {
        quantity: 'installed-height',
        spot: one,
        point: null,
        stage: 'after',
        value: 43_713_400,
        accepted: true,
        words: 'customer knows',
        by: 'TV',
      },
    ] as const;
    const [table] = placeTables(
      measuredOf({ limits, decisions, readings: [height('1.721', one), height('1.699', two)] }, [heights]),
      plainSheet(),
    );

    expect(table?.rows[0]?.verdicts).toEqual(['over', null]);
    expect(table?.notes).toContainEqual({
      label: 'Accepted:',
      words: '1E height read 1.721 by Teodor Vaskelund, customer knows.',
    });
  });

  it('prints the first run of what was done again between found and after', () => {
    const [first, again] = [id<'operation'>(1), id<'operation'>(2)];
    const readings = [
      height('1.731', one, { stage: 'before' }),
      height('1.722', one, { operation: first }),
      height('1.701', one, { operation: again }),
    ];
    const [table] = placeTables(
      measuredOf({ limits, readings }, [heights], { redone: new Set([again]) }),
      plainSheet(),
    );

    expect(table?.rows.map(({ stage, values }) => [stage, values[0]])).toEqual([
      ['found', '1.731'],
      ['after, first', '1.722'],
      ['after, again', '1.701'],
    ]);
  });

  it('strikes out what was replaced and says why under the table', () => {
    const old = height('1.713', two);
    const readings = [height('1.701', one), old, height('1.703', two, { supersedes: old.id, reason: 'drum misread' })];
    const [table] = placeTables(measuredOf({ limits, readings }, [heights]), plainSheet());

    expect(table?.rows[0]).toMatchObject({ values: ['1.701', '1.703'], struck: [null, '1.713 a'] });
    expect(table?.notes).toContainEqual({
      label: 'a',
      words: '1I height read: 1.713 replaced 2026-03-09 by Teodor Vaskelund: drum misread.',
    });
  });

  it('says the uncertainty of each row on a certified sheet, and keeps too close from being a pass', () => {
    const tool = toolOf({ uncertainty: 25_400 });
    const readings = [height('1.7095', one, { tool: tool.id }), height('1.7000', two, { tool: tool.id })];
    const [table] = placeTables(measuredOf({ limits, readings, tools: [tool], guard: true }, [heights]), {
      ...plainSheet(),
      certified: true,
    });

    expect(table?.rows[0]).toMatchObject({ doubt: '±0.001', verdicts: ['close', null] });
    expect(table?.verdictWords).toBe('Figures with a limit: 1 pass, 1 too close to call.');
    expect(table).not.toHaveProperty('verdict');
  });

  it('says where a gauge cannot prove a tolerance', () => {
    const tool = toolOf({ uncertainty: 300_000 });
    const readings = [height('1.7000', one, { tool: tool.id })];
    const [table] = placeTables(measuredOf({ limits, readings, tools: [tool], guard: true }, [heights]), {
      ...plainSheet(),
      certified: true,
    });

    expect(JSON.stringify(table?.notes)).toContain('this gauge cannot prove this tolerance');
  });

  it('prints a quantity that no code names', () => {
    const odd = quantity('spline-wobble', 'spline wobble', { ...valve, fine: true });
    const [table] = placeTables(
      measuredOf(
        {
          quantities: [...QUANTITIES, odd],
          limits: [limitOf('spline-wobble', 'in', { high: '.0100' })],
          readings: [{ ...readingOf('stem', '.0123', 'in', { spot: one }), quantity: odd.code }],
        },
        [tableOf([benchRow(odd.code)])],
      ),
      plainSheet(),
    );

    expect(table?.rows).toMatchObject([
      { label: 'Spline wobble, in', values: ['0.0123', ''], limit: 'at most .0100', verdicts: ['over', null] },
    ]);
  });

  it('shows both figures where two people disagree', () => {
    const readings = [height('1.701', one), height('1.731', one, { by: 'DK' })];
    const [table] = placeTables(
      measuredOf({ limits, readings: [...readings, height('1.7', two)] }, [heights]),
      plainSheet(),
    );

    expect(table?.rows[0]?.values[0]).toBe('1.701 or 1.731');
  });
});

describe('letterAt', () => {
  it('goes on after z with two letters (exact mathematics)', () => {
    expect([0, 25, 26, 27, 51, 52].map(letterAt)).toEqual(['a', 'z', 'aa', 'ab', 'az', 'ba']);
  });
});
