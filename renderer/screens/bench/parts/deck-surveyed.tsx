/** The survey itself: typing on the drawing with the pad, or the result beside it. */
import { useMemo, useState } from 'react';
import type { DrawnType } from '#core/drawing/drawn-type.ts';
import type { DeckSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { useOutboxState } from '../../../client/use-outbox.ts';
import { useAct } from '../../../kit/keyboard.ts';
import { Notice } from '../../../kit/notice.tsx';
import { type BenchCasting, operationOf } from '../bench-casting.ts';
import { isSecondUp, ONCE, ORDER } from '../deck-view.ts';
import { useDeckSurvey } from '../hooks/use-deck-survey.ts';
import { useGauge } from '../hooks/use-gauge.ts';
import { useJustTyped } from '../hooks/use-just-typed.ts';
import { useReadingEntry } from '../hooks/use-reading-entry.ts';
import { useTableHand } from '../hooks/use-table-hand.ts';
import { DeckBar } from './deck-bar.tsx';
import { DeckDrawing } from './deck-drawing.tsx';
import { DeckHead } from './deck-head.tsx';
import { DeckReport } from './deck-report.tsx';
import css from './deck-surveyed.module.css';
import { DeckTyping } from './deck-typing.tsx';
import { NotTaken } from './not-taken.tsx';

export function DeckSurveyed({
  bench,
  survey,
  type,
}: {
  bench: BenchCasting;
  survey: DeckSurvey;
  /** Null until the drawing is known. */
  type: DrawnType | null;
}) {
  const choice = useDeckSurvey(survey, upperIsSecond(survey, type));
  const { sheet, part } = choice;
  const stage = survey[choice.stage];
  const typed = useMemo(() => sheet.rows.filter((row) => row.shown), [sheet]);
  const hand = useTableHand(sheet, ORDER, typed);
  const [gauge, setGauge] = useGauge(
    survey.face.table,
    survey.tools.map((tool) => tool.id),
  );
  const just = useJustTyped(survey);
  const mates = useMemo(() => typed.map((row) => ({ row: row.key, column: ONCE })), [typed]);
  const operation = operationOf(bench, survey.face.table)?.id ?? null;
  const entry = useReadingEntry({
    sheet,
    order: ORDER,
    hand,
    gauge,
    operation,
    see: just.see,
    // Sizes have nothing in common that could be the same for all.
    mates: part === 'sizes' ? undefined : mates,
  });
  const { entries } = useOutboxState();
  // The pedal takes the reading or goes on; it never ends an operation.
  useAct('go', entry.next);
  useAct('undo', entry.undo?.onPress);

  const [asked, setAsked] = useState<boolean | null>(null);
  const [panel, setPanel] = useState(false);
  const [relief, setRelief] = useState<boolean | null>(null);
  const [section, setSection] = useState<string | null>(null);
  const typing = !survey.locked && (part === 'sizes' || (asked ?? !choice.whole));
  const clear = () => {
    hand.setText('');
    setPanel(false);
  };
  const show = {
    ...choice,
    setPart(next: typeof part) {
      clear();
      setAsked(null);
      choice.setPart(next);
    },
    setStage(next: typeof choice.stage) {
      clear();
      setAsked(null);
      choice.setStage(next);
    },
  };
  const toPlace = (row: string) => {
    hand.choose(ONCE, row);
    if (!survey.locked) setAsked(true);
  };
  const withRelief = relief ?? !typing;
  const drawing = type && (
    <DeckDrawing
      bench={bench}
      survey={survey}
      stage={stage}
      choice={choice}
      type={type}
      just={just}
      current={typing ? (hand.at?.row ?? null) : null}
      relief={withRelief}
      quiet={typing}
      section={section}
      onChoose={toPlace}
    />
  );
  const bar = (
    <DeckBar
      choice={show}
      words={barWords(survey)}
      relief={withRelief}
      onRelief={() => setRelief(!withRelief)}
      gauge={typing ? panel : null}
      onGauge={() => setPanel(!panel)}
      typing={typing}
      onTyping={survey.locked || part === 'sizes' ? undefined : () => setAsked(!typing)}
    />
  );
  const { spot } = entry;
  return (
    <div className={css.page}>
      <div className={css.top}>
        <DeckHead
          bench={bench}
          survey={survey}
          stage={stage}
          turned={choice.lie.turned}
          onTurn={() => choice.setTurned(!choice.lie.turned)}
        />
        <Notes survey={survey} />
        {spot && <NotTaken spot={spot} entries={entries} onGo={(_, row) => toPlace(row)} />}
      </div>
      {typing && spot ? (
        <DeckTyping
          survey={survey}
          stage={stage}
          choice={choice}
          bar={bar}
          drawing={drawing}
          spot={spot}
          hand={hand}
          entry={entry}
          just={just}
          operation={operation}
          gauge={gauge}
          onGauge={setGauge}
          panel={panel}
          onPanel={setPanel}
        />
      ) : (
        <DeckReport
          bench={bench}
          survey={survey}
          stage={stage}
          choice={choice}
          bar={bar}
          drawing={drawing}
          just={just}
          section={section}
          onSection={setSection}
          onPlace={toPlace}
        />
      )}
    </div>
  );
}

/** What is still to be said of the face. */
const barWords = ({ grid }: DeckSurvey): string =>
  grid.length === null || grid.width === null ? 'Length and width of the face: under Sizes.' : '';

/** Whether the drawing's upper side is y = 1 of the face. The right bank of a block lies with its valley below. */
function upperIsSecond({ face }: DeckSurvey, type: DrawnType | null): boolean {
  if (face.code === 'right-deck') return true;
  const rows = type?.spots.filter((spot) => spot.kind === 'valve') ?? [];
  const first = Math.min(...rows.map((spot) => spot.row));
  const sides = new Set(rows.filter((spot) => spot.row === first).map((spot) => spot.side));
  return isSecondUp(face.sides, sides.size === 1 ? [...sides][0] : undefined);
}

function Notes({ survey }: { survey: DeckSurvey }) {
  const notes = [
    ...(survey.locked ? ['Signed off: these readings are locked. A lead can reopen the casting with a reason.'] : []),
    ...survey.notes,
  ];
  if (notes.length === 0) return null;
  return <Notice kind={survey.locked ? 'ask' : 'plain'}>{notes.join('. ')}</Notice>;
}
