/** Text with the stretches that were looked for underlined in paint. */
import { Match } from '../../../kit/state.tsx';

export type Hit = Readonly<{ from: number; until: number }>;

/** The text cut at its hits, in order; hits that overlap or lie outside are left plain. */
export function cutAtHits(text: string, hits: readonly Hit[]): { words: string; hit: boolean; from: number }[] {
  const parts: { words: string; hit: boolean; from: number }[] = [];
  let at = 0;
  for (const { from, until } of hits.toSorted((a, b) => a.from - b.from)) {
    if (from < at || until <= from || until > text.length) continue;
    if (from > at) parts.push({ words: text.slice(at, from), hit: false, from: at });
    parts.push({ words: text.slice(from, until), hit: true, from });
    at = until;
  }
  if (at < text.length) parts.push({ words: text.slice(at), hit: false, from: at });
  return parts;
}

export function Hits({ text, hits }: { text: string; hits: readonly Hit[] }) {
  return cutAtHits(text, hits).map((part) =>
    part.hit ? <Match key={part.from}>{part.words}</Match> : <span key={part.from}>{part.words}</span>,
  );
}
