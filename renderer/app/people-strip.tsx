/** Who works here: change person with one touch, sign out, and on a bench screen the way to the other areas. */
import { useAppCommand, useAppQuery, useClient, useLink } from '../client/use-app.ts';
import { useFace } from '../client/use-shop.ts';
import { Button } from '../kit/button.tsx';
import { ErrorNote } from '../kit/notice.tsx';
import type { Area } from './areas.ts';
import css from './frame.module.css';
import { rememberPerson } from './person-memory.ts';

export function PeopleStrip({
  areas,
  onDone,
}: {
  /** Shown as buttons; empty at the desk. */ areas: readonly Area[];
  onDone: () => void;
}) {
  const client = useClient();
  const { person } = useLink();
  const names = useAppQuery('staff/list-sign-in-names', {});
  const signOut = useAppCommand('staff/sign-out');
  const leave = useAppCommand('shop/leave-practice-shop');
  const practice = useFace().data?.practice ?? false;
  const change = (to: number | null) => {
    rememberPerson(to);
    client.actAs(to);
    onDone();
  };
  const others = names.data?.people.filter((one) => one.signedInHere && one.staff !== person) ?? [];
  return (
    <section className={css.people} aria-label="Who works here">
      {others.map((one) => (
        <Button key={one.staff} onPress={() => change(one.staff)}>
          {one.name}
        </Button>
      ))}
      <Button onPress={() => change(null)}>Somebody else</Button>
      <Button
        kind="out"
        onPress={() => void signOut.send({}).then((done) => done && change(null))}
        working={signOut.pending}
      >
        Sign out
      </Button>
      {practice && (
        <Button kind="out" onPress={() => void leave.send({})} working={leave.pending}>
          Leave the practice shop
        </Button>
      )}
      {areas.map((area) => (
        <Button key={area.key} href={`#${area.path}`} onPress={onDone}>
          {area.words}
        </Button>
      ))}
      <ErrorNote error={signOut.error ?? leave.error} />
    </section>
  );
}
