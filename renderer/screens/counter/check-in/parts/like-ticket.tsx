/** "Like ticket ...": the same types, work and limits onto new castings; never readings or prices. */
import { useState } from 'react';
import { RequestRefused } from '../../../../client/request-refused.ts';
import { useClient } from '../../../../client/use-app.ts';
import { Field } from '../../../../kit/field.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import type { SetTyped } from '../hooks/use-check-in.ts';
import { likeTicket } from '../like.ts';
import css from './casting-list.module.css';

export function LikeTicket({ set }: { set: SetTyped }) {
  const client = useClient();
  const [text, setText] = useState('');
  const [error, setError] = useState<RequestRefused | null>(null);
  const take = async () => {
    setError(null);
    try {
      const { ticketId } = await client.call('tickets/get-ticket', { number: Number.parseInt(text, 10) });
      const like = await client.call('tickets/get-like', { ticketId });
      const [{ kinds }, { packages }, { types }] = await Promise.all([
        client.call('operations/list-kinds', {}),
        client.call('operations/list-packages', {}),
        client.call('operations/list-casting-types', { privateToo: true }),
      ]);
      set((before) => likeTicket(before, { like, ticketId, kinds, packages, types }));
      setText('');
    } catch (thrown) {
      if (!(thrown instanceof RequestRefused)) throw thrown;
      setError(thrown);
    }
  };
  return (
    <div className={css.acts}>
      <Field
        label="Like ticket (number, Enter)"
        inputMode="numeric"
        value={text}
        onChange={(typed) => setText(typed.replace(/\D/g, ''))}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || text === '') return;
          event.preventDefault();
          void take();
        }}
      />
      <ErrorNote error={error} />
    </div>
  );
}
