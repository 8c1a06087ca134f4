/** Check-ins that were set aside, newest first; each is taken up again where it was left. */
import { useAppQuery } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { Row, Rows } from '../../../../kit/rows.tsx';
import { SheetHead } from '../../../../kit/sheet.tsx';

/** `at`: the one on the page now, left out. Nothing when none is set aside. */
export function SetAsideList({ at }: { at: number | null }) {
  const { data } = useAppQuery('devices/list-drafts', { kind: 'check_in' });
  const format = useFormat();
  const drafts = data?.drafts.filter((draft) => draft.draft !== at) ?? [];
  if (drafts.length === 0) return null;
  return (
    <>
      <SheetHead title="Set aside" end={`${drafts.length}`} />
      <Rows label="Set aside">
        {drafts.map((draft) => (
          <Row
            key={draft.draft}
            href={`#/counter/check-in/${draft.draft}`}
            title={<b>{draft.title ?? 'Nobody named yet'}</b>}
            note={`by ${draft.by}`}
            end={format.at(draft.keptAt)}
          />
        ))}
      </Rows>
    </>
  );
}
