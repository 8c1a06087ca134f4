/** What a release shows: each piece that left, what stays and why, and how the money stood. */
import { notFound } from '../../kernel/errors.ts';
import type { Id } from '../../kernel/ids.ts';
import { cents } from '../../kernel/units.ts';
import { list, sentence } from '../compute/words.ts';
import type { Named, ReleasePaper } from '../contract/papers.ts';
import {
  identityLines,
  listContainers,
  listItems,
  listPrintedCastings,
  metalWords,
  OWNER_BARS,
  type PrintedCasting,
  type PrintedContainer,
  pieceWords,
  tagOf,
} from './castings.ts';
import { pictureMark } from './files.ts';
import { partyOf, readTicketPeople, staffName } from './people.ts';
import type { Scene } from './scene.ts';

const getRelease = ({ db }: Scene, id: Id<'release'>) => {
  const row = db.one(db.q.selectFrom('release').selectAll().where('id', '=', id));
  if (!row) throw notFound('racks/no-such-release', 'This release');
  return row;
};
type Release = ReturnType<typeof getRelease>;

const PROOFS: Readonly<Record<Release['proof'], string>> = {
  claim_ticket: 'claim ticket',
  identity: 'identity paper',
  known: 'known to us',
};

/** @throws AppError `not-found` for a release that is not there */
export function readRelease(scene: Scene, id: Id<'release'>): Omit<ReleasePaper, 'head'> & { ticketId: Id<'ticket'> } {
  const { db } = scene;
  const release = getRelease(scene, id);
  const people = readTicketPeople(db, release.ticket_id);
  const left = db.all(db.q.selectFrom('release_item').selectAll().where('release_id', '=', id).orderBy('id'));
  const castings = listPrintedCastings(db, release.ticket_id);
  const containers = listContainers(db, release.ticket_id);
  const out = castings.filter((casting) => left.some(({ casting_id }) => casting_id === casting.id));
  const bags = containers.filter((container) => left.some(({ container_id }) => container_id === container.id));
  const staying = [
    ...castings
      .filter(({ out_at }) => out_at === null)
      .map((casting) => ({ label: String(casting.tag_no), words: `${pieceWords(casting)} stays` })),
    ...containers
      .filter(({ out_at }) => out_at === null)
      .map((bag) => ({ label: bag.label, words: `${bag.kind} stays` })),
  ];
  const pieces = out.length + bags.length;
  return {
    ticketId: release.ticket_id,
    number: `${people.ticket.number}-${ordinal(scene, release)}`,
    customer: partyOf(people),
    ticket: String(people.ticket.number),
    when: scene.moment(release.created_at),
    takenBy: release.taken_by,
    proof: list([PROOFS[release.proof], release.proof_words]),
    by: staffName(db, release.created_by),
    items: [...out.map((casting) => castingItem(scene, casting)), ...bags.map((bag) => bagItem(scene, bag))],
    total: `${pieces} ${pieces === 1 ? 'piece' : 'pieces'}${staying.length === 0 ? ', all out' : `, ${staying.length} stay`}`,
    staying,
    money: moneyWords(scene, release),
    notes: notesOf(scene, release, people.ticket.old_parts, bags),
    care: 'Our care ends here. A finished casting is oiled and wrapped: wash it before you build, and keep the gasket face covered.',
    signFor: release.taken_by,
    ...signatureOf(scene, release),
  };
}

/** Which release of the ticket it is, from 1. */
const ordinal = ({ db }: Scene, release: Release): number =>
  db.all(
    db.q.selectFrom('release').select('id').where('ticket_id', '=', release.ticket_id).where('id', '<=', release.id),
  ).length;

function castingItem({ db }: Scene, casting: PrintedCasting): ReleasePaper['items'][number] {
  const loose = listItems(db, casting.id).filter(
    ({ container_id, counted }) => container_id === null && (counted ?? 0) > 0,
  );
  return {
    tag: tagOf(casting),
    number: String(casting.tag_no),
    words: list([pieceWords(casting), metalWords(casting.material), ...identityLines(casting)]),
    contents: list(loose.map(({ counted, words }) => `${counted} ${words}`)),
    count: '1',
  };
}

const bagItem = ({ db }: Scene, bag: PrintedContainer): ReleasePaper['items'][number] => {
  const inside = db.all(
    db.q.selectFrom('arrival_item').select(['words', 'counted']).where('container_id', '=', bag.id),
  );
  return {
    number: bag.label,
    words: list([sentence(bag.kind), OWNER_BARS[bag.owner_mark]]),
    contents: list([bag.contents, ...inside.map(({ words, counted }) => `${counted ?? ''} ${words}`.trim())]),
    count: bag.count === null ? '1' : String(bag.count),
  };
};

function signatureOf(scene: Scene, { signature_id, created_at }: Release): Pick<ReleasePaper, 'signature'> {
  if (signature_id === null) return {};
  const png = pictureMark(scene.db, signature_id);
  return { signature: { when: scene.shortMoment(created_at), ...(png && { png }) } };
}

/** How the ticket's invoices stand today, or by whose yes it left unpaid. */
function moneyWords(scene: Scene, release: Release): string {
  if (release.unpaid_ok_by !== null) {
    return `NOT PAID: RELEASED WITH THE YES OF ${staffName(scene.db, release.unpaid_ok_by).toUpperCase()}, ${release.unpaid_why ?? ''}`;
  }
  const rows = scene.db.sql<{ number: number; open: number }>(
    `SELECT i.number, i.total_cents - COALESCE((SELECT SUM(a.amount_cents) FROM allocation a WHERE a.invoice_id = i.id), 0)
       - COALESCE((SELECT SUM(w.amount_cents) FROM write_off w WHERE w.invoice_id = i.id), 0) AS open
     FROM invoice i WHERE i.ticket_id = ? ORDER BY i.number`,
    release.ticket_id,
  );
  if (rows.length === 0) return '';
  const open = rows.reduce((sum, row) => sum + row.open, 0);
  const named = list(rows.map(({ number }) => `INVOICE ${number}`));
  return open <= 0 ? `PAID: ${named}, NOTHING LEFT TO PAY` : `ON ACCOUNT: ${named}, ${scene.money(cents(open))} OPEN`;
}

function notesOf(
  scene: Scene,
  release: Release,
  oldParts: 'return' | 'discard' | 'not_asked',
  bags: readonly PrintedContainer[],
): Named[] {
  const old = bags.filter(({ owner_mark }) => owner_mark === 'old_return');
  return [
    oldParts === 'return' && old.length > 0
      ? { label: 'Old parts', words: `asked back and handed back: ${list(old.map(({ label }) => label))}.` }
      : null,
    release.unworked === 1 ? { label: 'Returned unworked:', words: release.unworked_why ?? '' } : null,
    release.signed_on_paper === 1 ? { label: 'Signed', words: 'on paper.' } : null,
    release.signature_id !== null
      ? { label: 'Signed', words: `on the screen by ${release.taken_by}, ${scene.shortMoment(release.created_at)}.` }
      : null,
  ].filter((note): note is Named => note !== null);
}
