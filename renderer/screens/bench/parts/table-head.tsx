/** Whose table this is, what it is judged by, and what changes the view of it. */
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { Button } from '../../../kit/button.tsx';
import { classes } from '../../../kit/class-names.ts';
import { TitleBlock, TitleCell } from '../../../kit/sheet.tsx';
import { Rush } from '../../../kit/state.tsx';
import { Tag } from '../../../kit/tag.tsx';
import { foundAddress } from '../bench-addresses.ts';
import type { BenchCasting } from '../bench-casting.ts';
import { judgingLimit, limitFor, type Page, type Spot } from '../reading-view.ts';
import css from './table-head.module.css';

export function TableHead({
  bench,
  spot,
  pages,
  page,
  onPage,
  gaugeWords,
  panelOpen,
  onPanel,
  turned,
  onTurn,
}: {
  bench: BenchCasting;
  spot: Spot | null;
  pages: readonly Page[];
  page: number;
  onPage: (page: number) => void;
  gaugeWords: string;
  panelOpen: boolean;
  onPanel: () => void;
  turned: boolean;
  onTurn: () => void;
}) {
  const limit = spot && judgingLimit(spot);
  const load = spot && otherLimit(spot.sheet, 'seat-load', spot);
  return (
    <div className={css.top}>
      <Tag number={bench.tag} metal={bench.metal.class} size="l" />
      <span className={css.words}>
        <b>{bench.typeWords}</b>
        <br />
        {bench.customer} {bench.promise?.rush && <Rush />}
      </span>
      <div className={css.block}>
        <TitleBlock columns={`repeat(${load ? 4 : 3}, auto)`}>
          <TitleCell label="Target">{limit?.targetText ?? 'none'}</TitleCell>
          <TitleCell label="Limits">{limit?.text || 'not known'}</TitleCell>
          {load && <TitleCell label="Seat load">{load}</TitleCell>}
          <TitleCell label="Gauge">{gaugeWords}</TitleCell>
        </TitleBlock>
      </div>
      {pages.length > 1 && (
        <fieldset className={css.pages} aria-label="Side shown">
          {pages.map((one, n) => (
            <button
              key={one.words}
              type="button"
              className={classes(css.page, n === page && css.on)}
              aria-pressed={n === page}
              onClick={() => onPage(n)}
            >
              {sentence(one.words)}
              {one.trouble && <small>{one.trouble}</small>}
            </button>
          ))}
        </fieldset>
      )}
      <span className={css.acts}>
        <Button pressed={panelOpen} onPress={onPanel}>
          Gauge, paper
        </Button>
        <Button pressed={turned} onPress={onTurn}>
          Flip
        </Button>
        <Button kind="found" href={foundAddress(bench.tag)} label="Found something">
          Found
        </Button>
      </span>
    </div>
  );
}

/** INTAKE SIDE on a button is `Intake side`; labels of places stay as they are. */
const sentence = (words: string): string => (/\d/.test(words) ? words : words.charAt(0) + words.slice(1).toLowerCase());

function otherLimit(sheet: Sheet, quantity: string, spot: Spot): string | null {
  const row = sheet.rows.find((one) => one.quantity === quantity && one.shown);
  const limit = row && limitFor(row, spot.column.side);
  return limit ? `${limit.text} ${row.unitMark}` : null;
}
