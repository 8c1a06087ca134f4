/**
 * The limit mark: two upright limit lines on a base line and where the reading fell between them.
 *
 * For measured things only; money and counts use words. Colour, shape and word go together, and the shape alone reads
 * in one colour.
 */
import { classes } from './class-names.ts';
import css from './mark.module.css';

/** Where a reading fell. `found` is a finding without direction (a crack). */
export type Mark = 'pass' | 'over' | 'under' | 'close' | 'not-measured' | 'no-limit' | 'found';

const COLOUR: Readonly<Record<Mark, 'pass' | 'fail' | 'close' | 'blank'>> = {
  pass: 'pass',
  over: 'fail',
  under: 'fail',
  close: 'close',
  'not-measured': 'blank',
  'no-limit': 'blank',
  found: 'fail',
};

const WORDS: Readonly<Record<Mark, string>> = {
  pass: 'pass',
  over: 'over',
  under: 'under',
  close: 'too close to call',
  'not-measured': 'not measured',
  'no-limit': 'no limit known',
  found: 'found',
};

const line = { stroke: 'currentColor', strokeWidth: 2.4, fill: 'none' } as const;

function Shape({ mark }: { mark: Mark }) {
  switch (mark) {
    case 'pass':
      return (
        <>
          <path d="M7 1v17M23 1v17M4 18h22" {...line} />
          <circle cx="15" cy="9.5" r="4.4" fill="currentColor" />
        </>
      );
    case 'over':
      return (
        <>
          <path d="M3 1v17M13 1v17M1 18h14" {...line} />
          <path d="M17 3l11 6.5-11 6.5z" fill="currentColor" />
        </>
      );
    case 'under':
      return (
        <>
          <path d="M27 1v17M17 1v17M15 18h14" {...line} />
          <path d="M13 3L2 9.5 13 16z" fill="currentColor" />
        </>
      );
    case 'close':
      return (
        <>
          <path d="M5 1v17M21 1v2.6M21 15.4V18M3 18h20" {...line} />
          <path d="M21 3.6l6 6-6 6-6-6z" {...line} />
        </>
      );
    case 'not-measured':
      return <path d="M7 1v17M23 1v17" {...line} strokeDasharray="3 2.6" />;
    case 'no-limit':
      return <circle cx="15" cy="10" r="4.6" {...line} />;
    case 'found':
      return <path d="M2 12l6-5 4 6 3-3M18 7l3 5 4-7 3 4" {...line} />;
  }
}

/** The sign alone, hidden from a screen reader: put the word beside it. */
export function LimitMark({ mark }: { mark: Mark }) {
  return (
    <svg className={css.sign} viewBox="0 0 30 20" aria-hidden="true">
      <Shape mark={mark} />
    </svg>
  );
}

/** Sign and word in the verdict's colour. `words` says it better where it can: `too short`, `crack found`. */
export function Verdict({ mark, words }: { mark: Mark; words?: string | undefined }) {
  return (
    <span className={classes(css.verdict, css[COLOUR[mark]])}>
      <LimitMark mark={mark} />
      {words ?? WORDS[mark]}
    </span>
  );
}
