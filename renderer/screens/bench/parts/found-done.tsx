/** After a finding: what was kept, what is offered for it, and the other casting of a pair. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Sheet, SheetBody } from '../../../kit/sheet.tsx';
import type { BenchCasting } from '../bench-casting.ts';

type Done = OutputOf<App['floor/report-finding']>;

export function FoundDone({ bench, done }: { bench: BenchCasting; done: Done }) {
  return (
    <Sheet title="Kept" scroll>
      <SheetBody>
        <p role="status">
          <b>{done.words}</b>
        </p>
        {done.offers.length > 0 && (
          <p>
            Usual for it:{' '}
            {done.offers.map((offer) => offer.words + (offer.alsoNeeded ? ' (also needed)' : '')).join(', ')}. The
            counter asks the customer.
          </p>
        )}
        {done.otherOne.map((other) => (
          <OtherOne key={other.castingId} other={other} />
        ))}
        <Button kind="go" href={benchAddress(bench.tag)}>
          Back to {bench.tag}
        </Button>
      </SheetBody>
    </Sheet>
  );
}

function OtherOne({ other }: { other: Done['otherOne'][number] }) {
  const hold = useAppCommand('floor/open-hold');
  const [answered, setAnswered] = useState<string | null>(null);
  if (answered !== null) return <p role="status">{answered}</p>;
  return (
    <Notice
      kind="ask"
      acts={
        <>
          <Button
            working={hold.pending}
            onPress={() =>
              void hold
                .send({ castingId: other.castingId, reason: 'crack_or_scrap', words: null })
                .then((kept) => kept && setAnswered(kept.words))
            }
          >
            Hold {other.tag}
          </Button>
          <Button onPress={() => setAnswered(`${other.tag} goes on.`)}>{other.tag} goes on</Button>
        </>
      }
    >
      {other.question}
      <ErrorNote error={hold.error} />
    </Notice>
  );
}
