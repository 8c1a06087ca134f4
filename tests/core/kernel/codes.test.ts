import { describe, expect, it } from 'vitest';
import { CODE_LETTERS, type CodeKind, codeText, readCode } from '#core/kernel/codes.ts';

describe('codeText', () => {
  it('holds the kind letter and the number, nothing else', () => {
    expect(codeText('casting', '41170')).toBe('BT C41170');
    expect(codeText('added-work', '20455-A1')).toBe('BT A20455-A1');
  });

  it('has one letter for each kind', () => {
    const letters = Object.values(CODE_LETTERS);

    expect(new Set(letters).size).toBe(letters.length);
  });
});

describe('readCode', () => {
  it('takes apart what codeText made, for every kind', () => {
    for (const kind of Object.keys(CODE_LETTERS) as CodeKind[])
      expect(readCode(codeText(kind, 'R102-B'))).toEqual({ kind, number: 'R102-B' });
  });

  it('understands a reader that sends lower case and a line feed', () => {
    expect(readCode('bt c41170\n')).toEqual({ kind: 'casting', number: '41170' });
  });

  it.each(['', '41170', 'BT ', 'BT C', 'BT X41170', 'BTC41170', 'https://example.com'])(
    'knows %j is none of ours',
    (text) => {
      expect(readCode(text)).toBeUndefined();
    },
  );
});
