/** The operations of a casting in the order of the traveller. One is open under the hand, with what may be done to it. */
import { useEffect, useRef, useState } from 'react';
import { classes } from '../../../kit/class-names.ts';
import { Leaves, leafOf, leafWords } from '../../../kit/leaves.tsx';
import { Notice } from '../../../kit/notice.tsx';
import { Sheet } from '../../../kit/sheet.tsx';
import type { BenchCasting, BenchOperation } from '../bench-casting.ts';
import { OperationActs } from './operation-acts.tsx';
import css from './operation-list.module.css';

export function OperationList({ bench }: { bench: BenchCasting }) {
  const [chosen, setChosen] = useState<number | null>(null);
  const [said, setSaid] = useState<readonly string[]>([]);
  const open = bench.operations.find((row) => row.id === chosen) ?? handAt(bench.operations);
  const leaves = bench.operations.map((row) => leafOf(row.word));
  const current = useRef<HTMLLIElement>(null);
  const at = open?.id;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another operation under the hand comes into sight.
  useEffect(() => {
    current.current?.scrollIntoView?.({ block: 'nearest' });
  }, [at]);
  return (
    <Sheet title="Operations" note={`in this order, ${leafWords(leaves)}`} scroll>
      <div className={css.leaves}>
        <Leaves leaves={leaves} />
      </div>
      <div role="status">
        {said.length > 0 && (
          <Notice>
            {said.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </Notice>
        )}
      </div>
      <ol className={css.list}>
        {bench.operations.map((row) => (
          <li
            key={row.id}
            ref={row.id === at ? current : undefined}
            className={classes(css.row, row.id === at && css.now, row.mark === 'off' && css.off)}
          >
            <button type="button" className={css.name} aria-expanded={row.id === at} onClick={() => setChosen(row.id)}>
              <i className={classes(css.leaf, css[row.mark])} aria-hidden="true" />
              <span className={css.words}>
                <b>{row.words}</b>
                <span>{secondOf(row)}</span>
              </span>
              <span className={classes(css.end, row.mark === 'uncovered' && css.strong)}>{row.right}</span>
            </button>
            {row.id === at && <OperationActs bench={bench} row={row} onSaid={setSaid} onDone={() => setChosen(null)} />}
          </li>
        ))}
      </ol>
    </Sheet>
  );
}

/** Where the hand is: at work, else next, else the first that is still open. */
const handAt = (rows: readonly BenchOperation[]): BenchOperation | undefined =>
  rows.find((row) => row.mine !== null) ??
  rows.find((row) => row.running.length > 0) ??
  rows.find((row) => row.next) ??
  rows.find((row) => row.mark === 'open' || row.mark === 'uncovered');

function secondOf(row: BenchOperation): string {
  const redone = row.redoOf ? `redone, ${row.redoOf.cause}` : '';
  const waived = row.waived.map((waiver) => `${waiver.by} let pass: ${waiver.reason}`);
  return [row.second, redone, row.after.words, ...waived].filter((text) => text !== '').join(', ');
}
