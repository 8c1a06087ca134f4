/** Addresses of the bench's own pages. */
export const BENCHES = '#/bench/centres';
export const queueAddress = (centre: number): string => `#/bench/centre/${centre}`;
export const foundAddress = (tag: number): string => `#/bench/tag/${tag}/found`;
export const photosAddress = (tag: number): string => `#/bench/tag/${tag}/photos`;
export const readingsAddress = (tag: number): string => `#/bench/tag/${tag}/readings`;
export const tableAddress = (tag: number, table: string): string => `#/bench/tag/${tag}/table/${table}`;
export const limitsAddress = (tag: number): string => `#/bench/tag/${tag}/limits`;
export const signOffAddress = (tag: number): string => `#/bench/tag/${tag}/sign-off`;
/** The survey of a face: `deck`, `left-deck`, `intake-face`. Without one: the first the casting has. */
export const deckAddress = (tag: number, face?: string): string =>
  `#/bench/tag/${tag}/deck${face === undefined ? '' : `/${face}`}`;
