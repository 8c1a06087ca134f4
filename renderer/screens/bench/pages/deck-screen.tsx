/** A face of a casting surveyed by dial or straightedge: typed on its own drawing, then what it says and how much to cut. */
import { useMemo } from 'react';
import type { DeckSurvey } from '#core/readings/compute/deck-survey-model.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { drawnTypeOf } from '../../../kit/drawn-type.ts';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { BandAct, BandTitle } from '../../../kit/slots.tsx';
import type { BenchCasting } from '../bench-casting.ts';
import { DeckSurveyed } from '../parts/deck-surveyed.tsx';
import { KeptHere } from '../parts/kept-here.tsx';
import { READING_HINTS } from '../reading-hints.ts';

export function DeckScreen({ tag, face }: { tag: number; face: string | null }) {
  const bench = useAppQuery('floor/get-bench', { tag });
  const casting = bench.data?.castingId;
  const survey = useAppQuery(
    'readings/get-deck-survey',
    { casting: casting ?? 1, face },
    { enabled: casting !== undefined, ticket: bench.data?.ticketId },
  );
  const error = bench.error ?? survey.error;
  return (
    <>
      <BandTitle>{survey.data ? `${survey.data.face.words} flatness` : 'Flatness'}</BandTitle>
      <BandAct>
        <Button href={benchAddress(tag)}>Back to casting</Button>
      </BandAct>
      <KeyHints hints={READING_HINTS} />
      <KeptHere />
      {error && <ErrorNote error={error} acts={<Button onPress={() => void survey.refetch()}>Try again</Button>} />}
      {!error && !(bench.data && survey.data) && <Waiting />}
      {bench.data && survey.data && <Drawn bench={bench.data} survey={survey.data} />}
    </>
  );
}

/** With the casting's own drawing; the figures do not wait for it. */
function Drawn({ bench, survey }: { bench: BenchCasting; survey: DeckSurvey }) {
  const { position, numbering } = bench;
  const answer = useAppQuery('operations/get-casting-type', { castingType: bench.castingTypeId }).data;
  const type = useMemo(
    () => (answer ? drawnTypeOf(answer, { position, numbering }) : null),
    [answer, position, numbering],
  );
  return <DeckSurveyed key={survey.face.code} bench={bench} survey={survey} type={type} />;
}
