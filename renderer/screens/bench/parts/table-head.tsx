/** Whose table this is, what it is judged by, and what changes the view of it. */
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { classes } from '../../../kit/class-names.ts';
import { TitleBlock, TitleCell } from '../../../kit/sheet.tsx';
import { Rush } from '../../../kit/state.tsx';
import { Tag } from '../../../kit/tag.tsx';
import { deckAddress, foundAddress } from '../bench-addresses.ts';
import type { BenchCasting } from '../bench-casting.ts';
import { faceOfTable } from '../deck-faces.ts';
import type { StageShown } from '../reading-rows.ts';
import { judgedRows, judgingLimit, limitFor, type Page, type Spot } from '../reading-view.ts';
import css from './table-head.module.css';
import type { Panel } from './table-panel.tsx';

export function TableHead({
  bench,
  spot,
  pages,
  page,
  onPage,
  stage,
  onStage,
  gaugeWords,
  panel,
  onPanel,
  turned,
  onTurn,
}: {
  bench: BenchCasting;
  spot: Spot;
  pages: readonly Page[];
  page: number;
  onPage: (page: number) => void;
  /** Null where there is nothing to choose. */
  stage: StageShown | null;
  onStage: (stage: StageShown) => void;
  gaugeWords: string;
  panel: Panel;
  /** Opens a panel, or closes it when it is open. */
  onPanel: (panel: Panel) => void;
  turned: boolean;
  onTurn: () => void;
}) {
  return (
    <div className={css.top}>
      <Tag number={bench.tag} metal={bench.metal.class} size="l" />
      <span className={css.words}>
        <b>{bench.typeWords}</b>
        <span>
          {bench.customer} {bench.promise?.rush && <Rush />}
        </span>
      </span>
      <div className={classes(css.block, stage !== null && css.short)}>
        <JudgedBy spot={spot} gaugeWords={gaugeWords} most={stage === null ? MOST_JUDGED : 1} />
      </div>
      {stage !== null && (
        <div className={css.stages}>
          <Choice label="Stage" quiet options={STAGES} value={stage} onChange={onStage} />
        </div>
      )}
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
        <Button pressed={panel === 'gauge'} onPress={() => onPanel('gauge')}>
          <span>
            Gauge,
            <br />
            paper
          </span>
        </Button>
        {spot.sheet.columns.length > 1 && (
          <Button pressed={panel === 'picture'} onPress={() => onPanel('picture')}>
            Picture
          </Button>
        )}
        {hasOversize(spot.sheet) && (
          <Button pressed={panel === 'oversize'} onPress={() => onPanel('oversize')}>
            Oversize
          </Button>
        )}
        <Survey bench={bench} table={spot.sheet.table.code} />
        {spot.sheet.columns.length > 1 && (
          <Button pressed={turned} onPress={onTurn}>
            Flip
          </Button>
        )}
        <Button kind="found" href={foundAddress(bench.tag)} label="Found something">
          Found
        </Button>
      </span>
    </div>
  );
}

/** Where flatness stands in the table: the face on its drawing. */
function Survey({ bench, table }: { bench: BenchCasting; table: string }) {
  const face = faceOfTable(bench.kind, table);
  return face === null ? null : <Button href={deckAddress(bench.tag, face)}>Survey</Button>;
}

/** INTAKE SIDE on a button is `Intake side`; labels of places stay as they are. */
const sentence = (words: string): string => (/\d/.test(words) ? words : words.charAt(0) + words.slice(1).toLowerCase());

const STAGES = [
  { value: 'before', words: 'Before' },
  { value: 'after', words: 'After' },
  { value: 'both', words: 'Both' },
] as const;

/** Bores are made to one size: the table in which that size stands offers the choice. */
const hasOversize = (sheet: Sheet): boolean => sheet.rows.some((row) => row.quantity === 'bore-wanted');

/** What judges the place the hand is at: its own limits, else those of what is computed from it. */
function JudgedBy({ spot, gaugeWords, most }: { spot: Spot; gaugeWords: string; most: number }) {
  const { sheet, row } = spot;
  const limit = judgingLimit(spot);
  const others = limit?.text ? [] : judgedRows(spot).slice(0, most);
  const load = others.length > 0 ? null : otherLimit(sheet, 'seat-load', spot);
  const cells = [
    ...(limit?.targetText || others.length === 0
      ? [{ label: 'Target', words: limit?.targetText ? `${limit.targetText} ${row.unitMark}` : 'none' }]
      : []),
    ...(others.length === 0 ? [{ label: 'Limits', words: limit?.text || 'not known' }] : []),
    ...others.map((one) => limitCell(one.words, limitFor(one, spot.column.side)?.text ?? '')),
    ...(load === null ? [] : [{ label: 'Seat load', words: load }]),
    { label: 'Gauge', words: gaugeWords },
  ];
  return (
    <TitleBlock columns={`repeat(${cells.length}, auto)`}>
      {cells.map((cell) => (
        <TitleCell key={cell.label} label={cell.label}>
          {cell.words}
        </TitleCell>
      ))}
    </TitleBlock>
  );
}

/** `taper at most` over `0.005`, so that the figure stands alone. */
function limitCell(label: string, text: string): Readonly<{ label: string; words: string }> {
  const [, side, figure] = /^(at most|at least) (.*)$/.exec(text) ?? [];
  return side && figure ? { label: `${label} ${side}`, words: figure } : { label, words: text };
}

/** As many computed limits as the title block holds. */
const MOST_JUDGED = 2;

function otherLimit(sheet: Sheet, quantity: string, spot: Spot): string | null {
  const row = sheet.rows.find((one) => one.quantity === quantity && one.shown);
  const limit = row && limitFor(row, spot.column.side);
  return limit ? `${limit.text} ${row.unitMark}` : null;
}
