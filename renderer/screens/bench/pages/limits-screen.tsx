/** What judges this casting: each limit with its source, who typed it and who checked it, and a lead's choice of another. */
import { useState } from 'react';
import { useAppQuery } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetHead } from '../../../kit/sheet.tsx';
import { BandAct, BandTitle } from '../../../kit/slots.tsx';
import { readingsAddress } from '../bench-addresses.ts';
import { answeredBy, figuresOf, groupLimits, keyOf, type LimitRow, nameOf } from '../limits-view.ts';
import { LimitDetail } from '../parts/limit-detail.tsx';
import css from './limits-screen.module.css';

export function LimitsScreen({ tag }: { tag: number }) {
  const bench = useAppQuery('floor/get-bench', { tag });
  const casting = bench.data?.castingId;
  const limits = useAppQuery(
    'limits/list-resolved',
    { casting: casting ?? 1 },
    { enabled: casting !== undefined, ticket: bench.data?.ticketId },
  );
  const [chosen, setChosen] = useState<string | null>(null);
  const groups = groupLimits(limits.data ?? []);
  const detail = limits.data?.find((limit) => keyOf(limit) === chosen);
  return (
    <>
      <BandTitle>Limits of {tag}</BandTitle>
      <BandAct>
        <Button href={readingsAddress(tag)}>Back to readings</Button>
      </BandAct>
      <ErrorNote error={bench.error ?? limits.error} />
      {!limits.data && !limits.error && <Waiting />}
      {limits.data && casting !== undefined && (
        <div className={css.both}>
          <Sheet title="What judges it" note="touch one to check it or to take another" scroll>
            {limits.data.length === 0 && <Empty>No limit is known for this casting.</Empty>}
            {groups.map((group) => (
              <div key={group.title}>
                <SheetHead title={group.title} note={`${group.limits.length}`} />
                <Rows label={group.title}>
                  {group.limits.map((limit) => (
                    <LimitLine
                      key={keyOf(limit)}
                      limit={limit}
                      selected={keyOf(limit) === chosen}
                      onOpen={() => setChosen(keyOf(limit))}
                    />
                  ))}
                </Rows>
              </div>
            ))}
          </Sheet>
          {detail ? (
            <LimitDetail key={keyOf(detail)} casting={casting} limit={detail} />
          ) : (
            <Sheet title="One limit">
              <Empty>Touch a limit: its source, who answers for it, and what could be used instead stand here.</Empty>
            </Sheet>
          )}
        </div>
      )}
    </>
  );
}

function LimitLine({ limit, selected, onOpen }: { limit: LimitRow; selected: boolean; onOpen: () => void }) {
  return (
    <Row
      title={<b>{nameOf(limit)}</b>}
      note={[limit.source, answeredBy(limit)].filter((words) => words !== '').join('. ')}
      end={<b>{figuresOf(limit)}</b>}
      endNote={limit.checked ? '' : 'not checked'}
      selected={selected}
      onOpen={onOpen}
    />
  );
}
