/** Castings with what each waits for, and the operations of the one chosen. Castings move by bench and counter. */
import { useMay } from '../../../../client/use-me.ts';
import { askAddress, benchAddress } from '../../../../kit/addresses.ts';
import { Button } from '../../../../kit/button.tsx';
import { classes } from '../../../../kit/class-names.ts';
import { type Leaf, Leaves } from '../../../../kit/leaves.tsx';
import { moveInRows } from '../../../../kit/rows.tsx';
import { Empty, Sheet } from '../../../../kit/sheet.tsx';
import { Hold } from '../../../../kit/state.tsx';
import { Tag } from '../../../../kit/tag.tsx';
import type { PanelName } from '../panel-names.ts';
import type { Ticket, TicketCasting } from '../ticket-shapes.ts';
import css from './castings-pane.module.css';
import { OperationsTable } from './operations-table.tsx';

export function CastingsPane({
  ticket,
  chosen,
  onChoose,
  onLines,
  onPanel,
}: {
  ticket: Ticket;
  chosen: TicketCasting | undefined;
  onChoose: (castingId: number) => void;
  onLines: () => void;
  onPanel: (name: PanelName) => void;
}) {
  const may = useMay();
  return (
    <Sheet
      title="Castings and operations"
      note="castings move by bench and counter, operations by the machinist"
      end={<Button onPress={onLines}>Lines and prices</Button>}
      scroll
    >
      {ticket.castings.length === 0 && <Empty>No casting is here yet. What comes over the counter stands here.</Empty>}
      <ul className={css.castings} aria-label="Castings" onKeyDown={moveInRows}>
        {ticket.castings.map((casting) => (
          <li key={casting.castingId}>
            <button
              type="button"
              data-row=""
              className={classes(css.casting, casting === chosen && css.chosen)}
              aria-pressed={casting === chosen}
              onClick={() => onChoose(casting.castingId)}
            >
              <span className={css.tag}>
                <Tag number={casting.tagNo} metal={casting.metal.class} size="m" />
                <b>{casting.position === 'single' ? '' : casting.positionWords}</b>
              </span>
              <span>
                {casting.held ? <Hold>{casting.wordWords}</Hold> : <b>{casting.wordWords}</b>}
                <small>{casting.wordMore}</small>
              </span>
              <span className={css.work}>
                <Leaves leaves={casting.bar.map(leafOfPart)} />
                <span>{casting.nowWords}</span>
              </span>
              <span className={css.done}>{casting.doneWords}</span>
            </button>
          </li>
        ))}
        {containersOf(ticket).map((container) => (
          <li key={container.containerId} className={css.container}>
            <Tag number={container.label} />
            <span>
              {container.kindWords}, {container.contents}
            </span>
            <span className={css.quiet}>
              {container.ownerWords}
              {container.count !== null && `, ${container.count}`}
            </span>
            <span className={css.done}>{container.outAt ? 'out' : (container.place ?? 'no place yet')}</span>
          </li>
        ))}
      </ul>
      {chosen && <OperationsTable ticket={ticket} casting={chosen} />}
      {chosen && (
        <div className={css.acts}>
          {may.has('tickets:edit') && <Button onPress={() => onPanel('add-work')}>Add work on {chosen.tagNo}</Button>}
          {may.has('approvals:record') && (
            <Button href={askAddress(ticket.number, chosen.tagNo)}>Ask them about {chosen.tagNo}</Button>
          )}
          {may.has('parts:edit') && <Button onPress={() => onPanel('part')}>Add a part</Button>}
          <Button onPress={() => onPanel('photos')}>Photos, {ticket.photos}</Button>
          {may.has('floor:work') && <Button onPress={() => onPanel('hold')}>Hold</Button>}
        </div>
      )}
      {chosen && (
        <p className={css.foot}>
          {[
            chosen.castingNumber && `casting no. ${chosen.castingNumber}`,
            chosen.weightWords,
            chosen.place && `at ${chosen.place}`,
            chosen.countedWords,
          ]
            .filter(Boolean)
            .join(', ')}
          . <a href={benchAddress(chosen.tagNo)}>Its bench page</a>
        </p>
      )}
    </Sheet>
  );
}

const containersOf = (ticket: Ticket) => [
  ...ticket.castings.flatMap((casting) => casting.containers),
  ...ticket.containers,
];

const LEAVES: Readonly<Record<TicketCasting['bar'][number]['mark'], Leaf>> = {
  done: 'done',
  running: 'started',
  open: 'waiting',
  uncovered: 'not-approved',
  off: 'not-needed',
};

/** A held operation is painted, unless it is done. */
export const leafOfPart = (part: TicketCasting['bar'][number]): Leaf =>
  part.held && part.mark !== 'done' ? 'stopped' : LEAVES[part.mark];
