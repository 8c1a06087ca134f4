/** Found something: what, where, a photo, and who must move, in a handful of touches. */
import { useMemo, useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { InputOf } from '#core/kernel/contract.ts';
import { useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { keepTyped, useTyped } from '../../../client/use-draft.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { Button } from '../../../kit/button.tsx';
import { CastingDrawing } from '../../../kit/casting-drawing.tsx';
import { drawnTypeOf, spotsIn } from '../../../kit/drawn-type.ts';
import { Field } from '../../../kit/field.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Sheet, SheetBody } from '../../../kit/sheet.tsx';
import { BandAct, BandTitle } from '../../../kit/slots.tsx';
import type { BenchCasting } from '../bench-casting.ts';
import { EMPTY, type Finding, inputOf, isFinding, placeFrom } from '../finding.ts';
import { FoundDone } from '../parts/found-done.tsx';
import { HOLDS } from '../parts/hold-words.ts';
import { KeptHere } from '../parts/kept-here.tsx';
import { PhotoTaker } from '../parts/photo-taker.tsx';
import css from './found-screen.module.css';

export function FoundScreen({ tag }: { tag: number }) {
  const { data, error } = useAppQuery('floor/get-bench', { tag });
  return (
    <>
      <BandTitle>Found on {tag}</BandTitle>
      <BandAct>
        <Button href={benchAddress(tag)}>Back to casting</Button>
      </BandAct>
      <KeptHere />
      <ErrorNote error={error} />
      {!data && !error && <Waiting />}
      {data && <Found bench={data} />}
    </>
  );
}

type ReportInput = InputOf<App['floor/report-finding']>;

function Found({ bench }: { bench: BenchCasting }) {
  const name = `found-${bench.castingId}`;
  const [finding, setFinding] = useTyped<Finding>(name, EMPTY, isFinding);
  const set = (change: Partial<Finding>) => setFinding((before) => ({ ...before, ...change }));
  const report = useAppCommand('floor/report-finding');
  const [done, setDone] = useState<Awaited<ReturnType<typeof report.send>>>();
  const kinds = useAppQuery('operations/list-findings', {});
  const answer = useAppQuery('operations/get-casting-type', { castingType: bench.castingTypeId }).data;
  const { position, numbering } = bench;
  const type = useMemo(() => answer && drawnTypeOf(answer, { position, numbering }), [answer, position, numbering]);
  const balloons = useMemo(
    () => (finding.place ? [{ label: 'A', x: finding.place.x, y: finding.place.y }] : []),
    [finding.place],
  );
  const empty = finding.kind === null && finding.words.trim() === '';

  async function keep() {
    const kept = await report.send(inputOf(bench, finding) as ReportInput);
    if (!kept) return;
    keepTyped(name, null);
    setDone(kept);
  }
  if (done) return <FoundDone bench={bench} done={done} />;

  return (
    <div className={css.page}>
      <Sheet title="What" scroll>
        <div className={css.kinds}>
          {kinds.data?.findings.map((kind) => (
            <Button key={kind.id} pressed={finding.kind === kind.id} onPress={() => set({ kind: kind.id })}>
              {kind.shopWords}
            </Button>
          ))}
        </div>
        <ErrorNote error={kinds.error} />
      </Sheet>
      <Sheet title="Where" note={finding.place?.words ?? 'touch the place'} scroll>
        {type && (
          <CastingDrawing
            type={type}
            label={`Casting ${bench.tag}`}
            options={{ balloons }}
            current={finding.place?.key}
            onPlace={(place) =>
              set({ place: placeFrom(place, answer ? spotsIn(answer, { position, numbering }) : []) })
            }
          />
        )}
        <SheetBody>
          <Field
            label="In words, if need be"
            value={finding.words}
            onChange={(words) => set({ words })}
            maxLength={600}
          />
          <PhotoTaker photos={finding.photos} onPhotos={(photos) => set({ photos })} />
        </SheetBody>
      </Sheet>
      <Sheet title="Who must move" scroll>
        <div className={css.holds}>
          <Button pressed={finding.hold === null} onPress={() => set({ hold: null })}>
            Nobody, work goes on
          </Button>
          {HOLDS.map((hold) => (
            <Button key={hold.reason} pressed={finding.hold === hold.reason} onPress={() => set({ hold: hold.reason })}>
              {hold.words}
            </Button>
          ))}
        </div>
        <div className={css.keep}>
          <ErrorNote error={report.error} />
          <Button
            kind="found"
            working={report.pending}
            shut={empty ? 'Touch what you found.' : undefined}
            onPress={() => void keep()}
          >
            {finding.hold === null ? 'Keep it' : 'Keep it and hold'}
          </Button>
        </div>
      </Sheet>
    </div>
  );
}
