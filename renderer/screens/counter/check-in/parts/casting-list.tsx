/** The castings of this check-in with their boxes; the one chosen is on the middle sheet. */
import { Button } from '../../../../kit/button.tsx';
import { keysOf } from '../../../../kit/keyboard.ts';
import { Row, Rows } from '../../../../kit/rows.tsx';
import { Empty, Sheet } from '../../../../kit/sheet.tsx';
import { metalOf, Tag, WarningBar } from '../../../../kit/tag.tsx';
import { addCasting, addPairOf, castingWords, countedWords, dropCasting } from '../changes.ts';
import type { SetTyped } from '../hooks/use-check-in.ts';
import type { Troubles } from '../request.ts';
import type { CastingTyped, CheckInTyped } from '../typed.ts';
import { BoxFields } from './box-fields.tsx';
import css from './casting-list.module.css';
import { LikeTicket } from './like-ticket.tsx';

export function CastingList({ typed, set, troubles }: { typed: CheckInTyped; set: SetTyped; troubles: Troubles }) {
  const at = typed.castings.find((casting) => casting.key === typed.at);
  return (
    <Sheet title="Castings" end={typed.castings.length > 0 ? `${typed.castings.length}` : undefined} scroll>
      {typed.castings.length === 0 && <Empty>What comes over the counter stands here, each with its tag.</Empty>}
      <Rows label="Castings">
        {typed.castings.map((casting) => (
          <Row
            key={casting.key}
            lead={
              <Tag number={casting.tagNo || 'next'} metal={metalOf(casting.material)} blank={casting.tagNo === ''} />
            }
            title={<b>{castingWords(typed, casting)}</b>}
            note={<CastingNote casting={casting} wrong={troubles} />}
            onOpen={() => set((before) => ({ ...before, at: casting.key }))}
            selected={casting.key === typed.at}
          />
        ))}
      </Rows>
      {at && <MetalBar casting={at} />}
      <div className={css.acts}>
        <Button keys={keysOf('another-casting')} onPress={() => set(addCasting)}>
          Another casting
        </Button>
        {at && <Button onPress={() => set((before) => addPairOf(before, at.key))}>The other of the pair</Button>}
        {at && (
          <Button kind="out" onPress={() => set((before) => dropCasting(before, at.key))}>
            Take {castingWords(typed, at)} off
          </Button>
        )}
      </div>
      <LikeTicket set={set} />
      <BoxFields
        title="Boxes and trays of the whole job"
        boxes={typed.boxes}
        onBoxes={(boxes) => set((before) => ({ ...before, boxes }))}
      />
    </Sheet>
  );
}

function CastingNote({ casting, wrong }: { casting: CastingTyped; wrong: Troubles }) {
  const missing = Object.entries(wrong).find(([place]) => place.startsWith(`${casting.key}.`));
  if (missing) return <b className={css.wrong}>{missing[1]}</b>;
  const number = casting.castingNumber === '' ? '' : `, no. ${casting.castingNumber}`;
  return (
    <>
      {casting.typeText}
      {number}. {casting.bare ? 'bare' : countedWords(casting)}
    </>
  );
}

function MetalBar({ casting }: { casting: CastingTyped }) {
  const metal = metalOf(casting.material);
  if (metal === 'aluminium') return <WarningBar>ALUMINIUM - NO CAUSTIC</WarningBar>;
  if (metal === 'other') return <WarningBar>OTHER METAL - NO CAUSTIC</WarningBar>;
  if (casting.material === 'not_known') return <WarningBar>METAL NOT KNOWN - NO WASH</WarningBar>;
  return null;
}
