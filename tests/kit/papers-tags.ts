/** Examples of tags: S02 of the demo data. */
import type { TagPaper, TagsPaper } from '#core/sheets/contract/papers.ts';

type WithoutHead<T> = Omit<T, 'head'>;

const castingTag = (number: string, side: string, piece: string): TagPaper => ({
  stock: 'tag-5',
  kind: 'casting',
  number,
  title: `${side}, HEAD ${piece}`,
  lines: [{ words: '20455 Mudlark Lane' }, { words: 'Promise', strong: 'THU 11 MAR' }],
  corner: 'TWO PEOPLE',
  bar: 'ALUMINIUM - NO CAUSTIC',
  back: {
    lines: [
      { strong: '8 cam caps', words: 'bolted in place' },
      { strong: '24 lock halves', words: 'in bag B' },
      { strong: '1 dowel of 2', words: 'at arrival' },
      { words: 'MLS gasket. Do not stamp the deck.' },
    ],
    bar: 'CAPS STAY WITH THIS HEAD',
  },
});

export const castingTags: WithoutHead<TagsPaper> = {
  layout: 'sheet',
  tags: [
    castingTag('41234', 'LEFT', '1 of 2'),
    castingTag('41235', 'RIGHT', '2 of 2'),
    {
      stock: 'tag-5',
      kind: 'casting',
      number: null,
      title: '',
      lines: [{ words: 'write on it' }],
      corner: '',
      bar: '',
    },
  ],
};

export const bagTags: WithoutHead<TagsPaper> = {
  layout: 'sheet',
  tags: [
    {
      stock: 'tag-3',
      kind: 'container',
      number: '41234-A',
      title: 'Followers, adjusters: 24',
      lines: [{ words: 'left head, keep in order' }, { words: '20455 Mudlark Lane' }],
      corner: 'tray 1 of 3',
      bar: "CUSTOMER'S OWN",
    },
    {
      stock: 'tag-3',
      kind: 'container',
      number: '41235-A',
      title: 'Followers, adjusters: 24',
      lines: [{ words: 'right head, keep in order' }, { words: '20455 Mudlark Lane' }],
      corner: 'tray 2 of 3',
      bar: "CUSTOMER'S OWN",
    },
    {
      stock: 'tag-1',
      kind: 'container',
      number: '41235-B',
      title: '24 lock halves',
      lines: [{ words: '20455 Mudlark Lane' }],
      corner: 'bag 3 of 3',
      bar: 'KEEP IN ORDER',
    },
    {
      stock: 'tag-1',
      kind: 'container',
      number: null,
      title: '',
      lines: [{ words: 'write on it' }],
      corner: '',
      bar: '',
    },
  ],
};
