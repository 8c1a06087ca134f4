import { describe, expect, it } from 'vitest';
import { readingOf } from '#tests/kit/bench-facts.ts';
import { headFacts, survey } from '#tests/kit/face-facts.ts';

const fields = (words: Parameters<typeof headFacts>[0] = {}, face = 'deck') => survey(headFacts(words), face).fields;

describe('fieldsOf', () => {
  it('asks for the grid, the span, the finish, pits, earlier skims and the cam line of an overhead cam head', () => {
    expect(fields().map((it) => it.words)).toEqual([
      'Columns',
      'Rows',
      'Length',
      'Width',
      'Span judged',
      'Cut for the finish',
      'Deepest pit, groove or weld',
      'Taken off before',
      'Deck to cam line, front',
      'Deck to cam line, rear',
    ]);
    expect(fields({ camLayout: 'ohv' }).at(-1)?.words).toBe('Taken off before');
    expect(fields({}, 'intake-face')).toHaveLength(7);
  });

  it('says what counts: typed, of the sheet, or usual', () => {
    const typed = fields({ readings: [readingOf('deck-length', '17.5', 'in', { stage: 'before' })] });
    const at = (words: string, of = fields()) => of.find((it) => it.words === words);

    expect(at('Columns')).toMatchObject({ figure: { text: '5', marks: ['usual'] }, fromSheet: true, unitMark: '' });
    expect(at('Length')).toMatchObject({ figure: { text: '18.000' }, fromSheet: true, unitMark: 'in' });
    expect(at('Length', typed)).toMatchObject({ figure: { text: '17.500' }, fromSheet: false, cell: { text: '17.5' } });
    expect(at('Taken off before')).toMatchObject({ figure: { value: null, text: '' }, fromSheet: false });
  });
});
