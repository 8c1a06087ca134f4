/** The survey of a face with what this tablet shows of it: which part, which stage, how it lies, which way the hand goes. */
import { useMemo, useState } from 'react';
import type { Stage } from '#core/catalogue/compute/bench-table.ts';
import type { DeckSurvey } from '#core/readings/compute/deck-survey-model.ts';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import {
  type DeckPart,
  type DeckWay,
  edgeRows,
  gridRows,
  isWhole,
  type Lie,
  partComeFor,
  sheetFor,
  sizeRows,
  stageComeFor,
} from '../deck-view.ts';

/** What a tablet keeps over a reload; the way of the hand for all castings. */
const WAY = 'benchtag-deck-way';

export type DeckChoice = Readonly<{
  part: DeckPart;
  stage: Stage;
  lie: Lie;
  way: DeckWay;
  /** All rows of the part, in the order the hand takes them. */
  sheet: Sheet;
  /** Every place of the part has been read. */
  whole: boolean;
  setPart: (part: DeckPart) => void;
  setStage: (stage: Stage) => void;
  setTurned: (turned: boolean) => void;
  setWay: (way: DeckWay) => void;
}>;

/** `second`: the drawing's upper side is the face's second one. */
export function useDeckSurvey(survey: DeckSurvey, second: boolean): DeckChoice {
  const [chosenPart, setPart] = useState<DeckPart | null>(null);
  const [chosenStage, setStage] = useState<Stage | null>(null);
  const [turned, setTurned] = useState(false);
  const [way, setWay] = useState<DeckWay>(rememberedWay);
  const part = chosenPart ?? partComeFor(survey);
  const stage = chosenStage ?? stageComeFor(survey);
  const lie = useMemo(() => ({ turned, second }), [turned, second]);
  const rows = useMemo(() => {
    if (part === 'sizes') return sizeRows(survey);
    return part === 'grid' ? gridRows(survey, survey[stage], lie, way) : edgeRows(survey, survey[stage]);
  }, [survey, part, stage, lie, way]);
  const sheet = useMemo(() => sheetFor(survey, rows), [survey, rows]);
  return {
    part,
    stage,
    lie,
    way,
    sheet,
    whole: isWhole(rows),
    setPart,
    setStage,
    setTurned,
    setWay(next) {
      setWay(next);
      try {
        localStorage.setItem(WAY, next);
      } catch {
        // Chosen again after a reload.
      }
    },
  };
}

function rememberedWay(): DeckWay {
  try {
    return localStorage.getItem(WAY) === 'rows' ? 'rows' : 'there';
  } catch {
    return 'there';
  }
}
