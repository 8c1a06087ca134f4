/** The left side of a casting's page: tag, position, metal, drawing with its marks, sizes, what came with it. */
import { useMemo, useState } from 'react';
import type { Balloon } from '#core/drawing/drawn-type.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { CastingDrawing } from '../../../kit/casting-drawing.tsx';
import { drawnTypeOf } from '../../../kit/drawn-type.ts';
import { Late, Rush } from '../../../kit/state.tsx';
import { MetalMark, Tag, WarningBar } from '../../../kit/tag.tsx';
import type { BenchCasting } from '../bench-casting.ts';
import css from './casting-side.module.css';

export function CastingSide({ bench }: { bench: BenchCasting }) {
  const { promise, arrival } = bench;
  return (
    <div className={css.side}>
      <Tag number={bench.tag} metal={bench.metal.class} size="xl" />
      <dl className={css.facts}>
        <Fact label="Position">{bench.placeWords}</Fact>
        <Fact label="Ticket">
          {bench.ticketNumber} {bench.customer}
        </Fact>
        <Fact label="Promise">
          {promise ? promise.late ? <Late>{promise.words}, late</Late> : promise.words : 'none yet'}{' '}
          {promise?.rush && <Rush />}
        </Fact>
        <Fact label="Metal">
          <MetalMark metal={bench.metal.class} />
        </Fact>
      </dl>
      {bench.warnings.length > 0 && (
        <WarningBar>
          {bench.warnings.map((warning) => (
            <div key={warning}>{warning}</div>
          ))}
        </WarningBar>
      )}
      <Picture bench={bench} />
      <dl className={css.sizes}>
        {bench.sizes.map((size) => (
          <div key={`${size.quantity}-${size.words}`}>
            <dt>{size.words}</dt>
            <dd>{size.text}</dd>
          </div>
        ))}
      </dl>
      {sourcesOf(bench).map((source) => (
        <p key={source} className={css.source}>
          From {source}
        </p>
      ))}
      {arrival.cameWith !== '' && (
        <p className={css.came}>
          <b>Came with</b> {arrival.cameWith}
        </p>
      )}
      {arrival.notes.map((note) => (
        <p key={note} className={css.came}>
          {note}
        </p>
      ))}
      {bench.findings.map((finding) => (
        <p key={finding.id} className={css.came}>
          <b>Found</b> {finding.words} {finding.question && `(${finding.question})`}
        </p>
      ))}
    </div>
  );
}

/** Where the sizes come from, each source once. */
const sourcesOf = (bench: BenchCasting): string[] => [
  ...new Set(bench.sizes.map((size) => `${size.source}${size.checked ? '' : ', not checked'}`)),
];

function Fact({ label, children }: { label: string; children: React.ReactNode }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** Deck up unless it is turned with a touch; marks are numbered in the order they were made. */
function Picture({ bench }: { bench: BenchCasting }) {
  const [turned, setTurned] = useState(false);
  const answer = useAppQuery('operations/get-casting-type', { castingType: bench.castingTypeId }).data;
  const { position, numbering } = bench;
  const type = useMemo(() => answer && drawnTypeOf(answer, { position, numbering }), [answer, position, numbering]);
  const { marks } = bench.arrival;
  const view = marks.find((mark) => mark.x !== null)?.view;
  const balloons = useMemo(
    () =>
      marks.flatMap((mark, n): Balloon[] =>
        mark.x === null || mark.y === null || mark.view !== view
          ? []
          : [{ label: String(n + 1), x: mark.x, y: mark.y }],
      ),
    [marks, view],
  );
  if (!type) return null;
  return (
    <div className={css.picture}>
      <CastingDrawing
        type={type}
        label={`Casting ${bench.tag}`}
        options={{ turned, balloons, ...(isView(view) && { view }) }}
        caption={marks.map((mark, n) => (
          <span key={mark.id}>
            <b>{n + 1}</b> {mark.words}{' '}
          </span>
        ))}
      />
      <button type="button" className={css.flip} aria-pressed={turned} onClick={() => setTurned(!turned)}>
        Flip
      </button>
    </div>
  );
}

const VIEWS = ['deck', 'top', 'intake_face', 'exhaust_face', 'mains', 'side', 'face'] as const;
const isView = (view: string | undefined): view is (typeof VIEWS)[number] =>
  (VIEWS as readonly (string | undefined)[]).includes(view);
