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
  const { measureFirst, flatness, cut } = stage;
  const tooThin = cut !== null && cut.ways.length > 0 && cut.ways.every((way) => way.left?.verdict.name === 'fail');
  const kind = found.find((one) => one.code === (tooThin ? TOO_THIN : NOT_FLAT));
  const mayReport = flatness.verdict.name === 'fail' && kind !== undefined;
  if (!mayReport && measureFirst === null) return null;

  /** The finding is written down as far as it is known; the person looks at it there and keeps it. */
  function report(id: number) {
    const finding: Finding = { ...EMPTY, kind: id, words: foundWords(survey, stage) };
    keepTyped(`found-${bench.castingId}`, finding);
    window.location.hash = foundAddress(bench.tag);
  }
  return (
    <>
      {mayReport && (
        <Button wide kind={measureFirst === null ? 'go' : 'plain'} onPress={() => report(kind.id)}>
          {measureFirst === null ? askWords(kind, bench) : 'Report it'}
        </Button>
      )}
      {measureFirst !== null && (
        <GoButton wide href={tableAddress(bench.tag, measureFirst)}>
          Measure {measureFirst.replace('-', ' ')}
        </GoButton>
      )}
    </>
  );
}

type Kind = Readonly<{
  shopWords: string;
  offers: readonly Readonly<{ operation: string; words: string; alsoNeeded: boolean }>[];
}>;

/** `Ask for straighten`: what the catalogue offers for it and is not on this casting yet. */
function askWords({ shopWords, offers }: Kind, { operations }: BenchCasting): string {
  const wanted = new Set(operations.map((operation) => operation.kindCode));
  const usual = offers.filter((offer) => !offer.alsoNeeded && !wanted.has(offer.operation)).map((offer) => offer.words);
  return usual.length === 0 ? `Report ${shopWords}` : `Ask for ${usual.join(' or ')}`;
}
