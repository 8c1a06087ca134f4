/** What follows from a face that is not flat: what was found goes to the counter, the cam line is measured first. */
import type { DeckSurvey, StageSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { keepTyped } from '../../../client/use-draft.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { foundAddress, tableAddress } from '../bench-addresses.ts';
import type { BenchCasting } from '../bench-casting.ts';
import { foundWords } from '../deck-view.ts';
import { EMPTY, type Finding } from '../finding.ts';

/** Codes of the catalogue's findings. */
const NOT_FLAT = 'deck-not-flat';
const TOO_THIN = 'at-minimum-thickness';

export function DeckActs({ bench, survey, stage }: { bench: BenchCasting; survey: DeckSurvey; stage: StageSurvey }) {
  const found = useAppQuery('operations/list-findings', {}).data?.findings ?? [];
  const best = stage.cut?.ways[0];
  const code = best?.left?.verdict.name === 'fail' ? TOO_THIN : NOT_FLAT;
  const kind = stage.flatness.verdict.name === 'fail' ? found.find((one) => one.code === code) : undefined;
  const { measureFirst } = stage;
  const measures = measureFirst !== null && bench.tables.some((table) => table.code === measureFirst);
  if (!kind && !measures) return null;

  /** The finding is written down as far as it is known; the person looks at it there and keeps it. */
  function report(id: number) {
    const finding: Finding = { ...EMPTY, kind: id, words: foundWords(survey, stage) };
    keepTyped(`found-${bench.castingId}`, finding);
    window.location.hash = foundAddress(bench.tag);
  }
  return (
    <>
      {measures && <Button href={tableAddress(bench.tag, measureFirst)}>Measure cam line</Button>}
      {kind && (
        <GoButton wide onPress={() => report(kind.id)}>
          {askWords(kind)}
        </GoButton>
      )}
    </>
  );
}

type Kind = Readonly<{ shopWords: string; offers: readonly Readonly<{ words: string; alsoNeeded: boolean }>[] }>;

/** `Ask for surface head or straighten`, as the catalogue offers for it. */
function askWords({ shopWords, offers }: Kind): string {
  const usual = offers.filter((offer) => !offer.alsoNeeded).map((offer) => offer.words);
  return usual.length === 0 ? `Report ${shopWords}` : `Ask for ${usual.join(' or ')}`;
}
