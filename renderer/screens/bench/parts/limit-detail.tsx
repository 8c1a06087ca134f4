/** One limit: where it comes from, the check by a second person, and another limit in its place by a lead, with a reason. */
import { useState } from 'react';
import { newKey } from '../../../client/client.ts';
import { useAppCommand, useClient } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { Field } from '../../../kit/field.tsx';
import { NameAndPin } from '../../../kit/name-and-pin.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Sheet, SheetBody, SheetHead } from '../../../kit/sheet.tsx';
import { answeredBy, figuresOf, type LimitRow, nameOf } from '../limits-view.ts';

export function LimitDetail({ casting, limit }: { casting: number; limit: LimitRow }) {
  const check = useAppCommand('limits/check-limit');
  const others = limit.others.filter((other) => other.text !== '' || other.targetText !== null);
  return (
    <Sheet title={nameOf(limit)} note={figuresOf(limit)} scroll>
      <SheetBody>
        <p>{limit.source}</p>
        {answeredBy(limit) !== '' && <p>{answeredBy(limit)}</p>}
        {limit.notes.map((note) => (
          <p key={note}>{note}</p>
        ))}
        {!limit.checked && (
          <Button working={check.pending} onPress={() => void check.send({ limit: limit.id })}>
            I checked it with its source
          </Button>
        )}
        <ErrorNote error={check.error} />
      </SheetBody>
      {others.length > 0 && <Others casting={casting} limit={limit} />}
    </Sheet>
  );
}

/** What else fits. The order of limits decides until a lead says otherwise, with a reason that is printed. */
function Others({ casting, limit }: { casting: number; limit: LimitRow }) {
  const client = useClient();
  const [chosen, setChosen] = useState<number | null>(null);
  const [why, setWhy] = useState('');
  const other = limit.others.find((one) => one.id === chosen);
  return (
    <>
      <SheetHead title="Could be used instead" note="a lead decides, by name and with a reason" />
      <Rows label="Could be used instead">
        {limit.others.map((one) => (
          <Row
            key={one.id}
            title={<b>{figuresOf(one)}</b>}
            note={[one.source, answeredBy(one)].filter((words) => words !== '').join('. ')}
            endNote={one.checked ? '' : 'not checked'}
            selected={one.id === chosen}
            onOpen={() => setChosen(one.id)}
          />
        ))}
      </Rows>
      {other && (
        <SheetBody>
          <Field label="Why, printed beside it" value={why} onChange={setWhy} maxLength={240} />
          <NameAndPin
            act={`Lead takes ${figuresOf(other)}`}
            kind="out"
            shut={why.trim() === '' ? 'Write why.' : undefined}
            onClose={() => setChosen(null)}
            onSend={async ({ person, pin }) => {
              const key = newKey();
              await client.call('limits/choose-limit', { casting, limit: other.id, why }, { as: person, pin, key });
              setWhy('');
              setChosen(null);
            }}
          />
        </SheetBody>
      )}
    </>
  );
}
