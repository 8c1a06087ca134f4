/** The drop-off sheet: the same for everybody, with the name filled in where the ticket is known. */
import type { TicketId } from '../../kernel/ids.ts';
import type { DropOffPaper } from '../contract/papers.ts';
import { readTicketPeople } from './people.ts';
import type { Scene } from './scene.ts';

/** Common practice, no source. */
const BEFORE = [
  { label: 'Take off', words: 'manifolds, sensors, glow plugs and spark plugs, housings. Drain water and oil.' },
  { label: 'Keep in order', words: 'followers, shims and caps: numbered holes in a board, or one bag for each place.' },
  { label: 'Bring', words: 'all caps with their bolts, and the head bolts if they are to be checked.' },
  { label: 'Do not', words: 'clean the gasket face with an abrasive disc: it cuts hollows that cannot be seen.' },
  { label: 'Lifting', words: 'anything over 25 kg: two people or our hoist. Ask at the counter.' },
];
const QUESTIONS = [
  'Which gasket will be used, and how thick is it',
  'Cam or valve lift, if it is not the original',
  'Overheated, run without water, frozen',
  'Machined before: what and when',
  'What it is used for (road, boat, farm, race)',
  'What is wrong, in your words',
  'Your own marks on it',
  'Old parts back: yes or no',
  'Up to which amount without a call, with or before tax',
  'Who may say yes for you, and by which number',
];

/** @param id null for the blank sheet of the counter */
export function readDropOff({ db }: Scene, id: TicketId | null): Omit<DropOffPaper, 'head'> {
  const people = id === null ? null : readTicketPeople(db, id);
  return {
    number: people === null ? '' : String(people.ticket.number),
    customer: people?.customer.printName ?? '',
    before: BEFORE,
    questions: QUESTIONS,
    terms: 'We count and look at everything with you at the counter, and you get a claim ticket for it.',
  };
}
