/** A ticket as found: number, castings, the sentence to say, the word of its agreement. */
import { classes } from '../../../kit/class-names.ts';
import { SayThis } from '../../../kit/notice.tsx';
import { Hold } from '../../../kit/state.tsx';
import { Tag } from '../../../kit/tag.tsx';
import type { Found } from '../found.ts';
import css from './found-ticket-row.module.css';
import { Hits } from './hits.tsx';

const TAGS_SHOWN = 4;

export function FoundTicketRow({
  ticket,
  selected,
  href,
  onFocus,
  onOpen,
}: {
  ticket: Found['tickets'][number];
  selected: boolean;
  href: string | undefined;
  onFocus: () => void;
  onOpen: () => void;
}) {
  const held = ticket.open && ticket.chips.some((chip) => chip.chip === 'held' || chip.chip === 'unanswered');
  return (
    <li>
      <a
        className={classes(css.row, selected && css.selected)}
        data-row=""
        href={href}
        onFocus={onFocus}
        onClick={onOpen}
      >
        <span className={css.number}>
          {ticket.foundBy === 'ticket' ? <Hits text={String(ticket.number)} hits={ticket.hits} /> : ticket.number}
        </span>
        <span className={css.middle}>
          <span className={css.line}>
            {ticket.customer}, {ticket.line}
            {ticket.tags.slice(0, TAGS_SHOWN).map((tag) => (
              <Tag key={tag.castingId} number={tag.tag} metal={tag.metal.class} />
            ))}
            {ticket.tags.length > TAGS_SHOWN && <span>and {ticket.tags.length - TAGS_SHOWN} more</span>}
          </span>
          {ticket.say && <SayThis>{ticket.say}</SayThis>}
        </span>
        <span className={css.end}>
          {held ? <Hold>{ticket.wordMore ?? ticket.word}</Hold> : ticket.word}
          {!held && ticket.wordMore && <small>{ticket.wordMore}</small>}
        </span>
      </a>
    </li>
  );
}
