/** What stands where: every place, and the things of the one chosen. */
import { useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { Choice } from '../../../kit/choice.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import { type Metal, Tag } from '../../../kit/tag.tsx';

type Place = OutputOf<App['racks/list-places']>['places'][number];
export type Thing = OutputOf<App['racks/list-place']>['things'][number];

const placeAddress = (code: string): string => `#/racks/place/${encodeURIComponent(code)}`;

/** `3 castings, 5 bags`; `nothing`. */
function standing({ castings, containers }: Place): string {
  if (castings + containers === 0) return 'nothing';
  const parts = [
    castings > 0 && `${castings} ${castings === 1 ? 'casting' : 'castings'}`,
    containers > 0 && `${containers} ${containers === 1 ? 'bag or box' : 'bags and boxes'}`,
  ];
  return parts.filter(Boolean).join(', ');
}

export function Places() {
  const { data, error, isPending } = useAppQuery('racks/list-places', {});
  const [all, setAll] = useState(false);
  if (isPending) return <Waiting />;
  if (error) return <ErrorNote error={error} />;
  const taken = data.places.filter((place) => place.castings + place.containers > 0);
  const shown = all ? data.places : taken;
  return (
    <Sheet title="What stands where" end={`${taken.length} of ${data.places.length} places taken`} scroll>
      <SheetBody>
        <Choice
          quiet
          label="Show"
          options={[
            { value: 'taken', words: 'where something stands' },
            { value: 'all', words: 'every place' },
          ]}
          value={all ? 'all' : 'taken'}
          onChange={(value) => setAll(value === 'all')}
        />
      </SheetBody>
      {shown.length === 0 && data.places.length > 0 && <Empty>Nothing stands in a place.</Empty>}
      {data.places.length === 0 && <Empty>Places stand here once the owner has named them in Shop, Places.</Empty>}
      <Rows label="Places">
        {shown.map((place) => (
          <Row
            key={place.placeId}
            href={placeAddress(place.code)}
            title={
              <>
                <b>{place.code}</b> {place.words ?? ''}
              </>
            }
            note={[place.purposeWords !== place.words && place.purposeWords, place.limitWords]
              .filter(Boolean)
              .join(', ')}
            end={standing(place)}
          />
        ))}
      </Rows>
    </Sheet>
  );
}

export function PlacePane({ code }: { code: string }) {
  const { data, error, isPending } = useAppQuery('racks/list-place', { place: code });
  if (isPending) return <Waiting />;
  return (
    <Sheet
      title={data ? data.place.code : code}
      note={
        data &&
        [...new Set([data.place.words, data.place.purposeWords, data.place.limitWords])].filter(Boolean).join(', ')
      }
      scroll
    >
      <ErrorNote error={error} />
      {data?.things.length === 0 && <Empty>Nothing stands here.</Empty>}
      {data && <ThingRows label={`What stands in ${code}`} things={data.things} />}
      <SheetFoot>
        <Button href="#/racks">All places</Button>
      </SheetFoot>
    </Sheet>
  );
}

/** The metal of a thing from its word; a bag has none. */
const metalOfWord = (thing: Thing): Metal | undefined => {
  if (thing.castingId === null || thing.containerId !== null) return undefined;
  const word = thing.metalWord?.toLowerCase();
  return word === 'iron' || word === 'aluminium' ? word : word === 'other metal' ? 'other' : 'not_known';
};

/** Things with their ticket; a row leads to handing that ticket over. */
export function ThingRows({
  label,
  things,
  place = false,
}: {
  label: string;
  things: readonly Thing[];
  place?: boolean;
}) {
  const format = useFormat();
  return (
    <Rows label={label}>
      {things.map((thing) => (
        <Row
          key={thing.label}
          href={`#/racks/release/${thing.ticketNumber}`}
          lead={<Tag number={thing.label} metal={metalOfWord(thing)} />}
          title={
            <>
              <b>{thing.customer}</b>, {thing.words}
            </>
          }
          note={`ticket ${thing.ticketNumber}${thing.since ? `, since ${format.at(thing.since)}` : ''}${thing.by ? `, ${thing.by}` : ''}`}
          end={place && (thing.place ?? 'never put away')}
        />
      ))}
    </Rows>
  );
}
