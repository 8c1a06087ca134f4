/** Racks: put things away, see what stands where, and what is ready to hand over. */
import { useMay } from '../../client/use-me.ts';
import { KeyHints } from '../../kit/key-hints.tsx';
import { keysOf } from '../../kit/keyboard.ts';
import { RowGroup } from '../../kit/rows.tsx';
import { PageName } from '../../kit/sheet.tsx';
import { PlacePane, Places } from './parts/places.tsx';
import { PutAway } from './parts/put-away.tsx';
import { ReadyList } from './parts/ready-list.tsx';
import css from './racks-screen.module.css';

/** `at`: the place that is looked into; none shows all of them. */
export function RacksScreen({ at = null }: { at?: string | null }) {
  const may = useMay();
  return (
    <RowGroup>
      <div className={css.page}>
        <PageName>{at === null ? 'Racks' : `Place ${at}`}</PageName>
        <PutAway />
        {at === null ? <Places /> : <PlacePane code={at} />}
        {may.has('tickets:see') && <ReadyList />}
      </div>
      <KeyHints
        hints={[
          { keys: ['Enter'], words: 'one more piece' },
          { keys: [keysOf('go')], words: 'put away' },
          { keys: ['Up', 'Down'], words: 'move in lists' },
        ]}
      />
    </RowGroup>
  );
}
