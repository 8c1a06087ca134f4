import { describe, expect, it } from 'vitest';
import { leafOfPart } from '#renderer/screens/counter/ticket/parts/castings-pane.tsx';

type Part = Parameters<typeof leafOfPart>[0];
const part = (mark: Part['mark'], held = false) => ({ operation: 1, mark, held }) as unknown as Part;

describe('leafOfPart', () => {
  it('paints what is held, and leaves done work filled whatever is held', () => {
    expect(leafOfPart(part('open', true))).toBe('stopped');
    expect(leafOfPart(part('running', true))).toBe('stopped');
    expect(leafOfPart(part('done', true))).toBe('done');
  });

  it.each([
    ['running', 'started'],
    ['open', 'waiting'],
    ['uncovered', 'not-approved'],
    ['off', 'not-needed'],
  ] as const)('%s is a leaf %s', (mark, leaf) => {
    expect(leafOfPart(part(mark))).toBe(leaf);
  });
});
