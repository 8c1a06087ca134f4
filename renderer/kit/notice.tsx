/** Notices stand in the page until their cause is gone; none leaves by itself and none lies over the work. */
import type { RequestRefused } from '../client/request-refused.ts';
import { classes } from './class-names.ts';
import css from './notice.module.css';

/** Words with at most two buttons. `ask`: paint edge; `wrong`: fail edge; `plain`: ink edge. */
export function Notice({
  kind = 'plain',
  children,
  acts,
}: {
  kind?: 'ask' | 'wrong' | 'plain';
  children: React.ReactNode;
  acts?: React.ReactNode;
}) {
  return (
    <div className={classes(css.notice, css[kind])} role={kind === 'wrong' ? 'alert' : 'status'}>
      <div className={css.words}>{children}</div>
      {acts && <div className={css.acts}>{acts}</div>}
    </div>
  );
}

/**
 * Why a request was refused: what is the matter, what is still safe, what to do. Nothing when there is no error.
 *
 * A sentence that belongs to a field is left to that field: name them in `fieldsShown`, and it is not said twice.
 */
export function ErrorNote({
  error,
  acts,
  fieldsShown = [],
}: {
  error: RequestRefused | null | undefined;
  acts?: React.ReactNode;
  fieldsShown?: readonly string[];
}) {
  if (!error) return null;
  const { message, fields, reference } = error.reply;
  const elsewhere = Object.entries(fields ?? {}).filter(([path]) => !fieldsShown.includes(path));
  if (fields && elsewhere.length === 0) return null;
  const sentences = new Set(fields ? elsewhere.map(([, sentence]) => sentence) : [message]);
  return (
    <Notice kind="wrong" acts={acts}>
      {[...sentences].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {reference && !message.includes(reference) && <p className={css.reference}>Reference {reference}</p>}
    </Notice>
  );
}

/** One sentence in quotes to read aloud to the caller. */
export function SayThis({ children }: { children: React.ReactNode }) {
  return <q className={css.say}>{children}</q>;
}
