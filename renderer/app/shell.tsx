/** What stands between the page's start and the frame: is there a shop, and who works here now? */
import { lazy, useEffect, useState } from 'react';
import { useAppQuery, useClient, useLink } from '../client/use-app.ts';
import { useFace } from '../client/use-shop.ts';
import { Button } from '../kit/button.tsx';
import { ErrorNote } from '../kit/notice.tsx';
import { Pane, Waiting } from '../kit/pane.tsx';
import { PlainBand } from './band.tsx';
import { Frame } from './frame.tsx';
import { rememberedPerson, rememberPerson } from './person-memory.ts';
import css from './shell.module.css';
import { SignIn } from './sign-in.tsx';
import { useIdle } from './use-idle.ts';

const FirstRun = lazy(async () => ({
  default: (await import('../screens/first-run/first-run-screen.tsx')).FirstRunScreen,
}));

export function Shell() {
  const face = useFace();
  if (face.isPending) return <Waiting />;
  if (face.error) {
    return (
      <div className={css.alone}>
        <ErrorNote error={face.error} acts={<Button onPress={() => void face.refetch()}>Try again</Button>} />
      </div>
    );
  }
  if (!face.data.set) {
    return (
      <>
        <PlainBand words="first day" />
        <Pane>
          <FirstRun />
        </Pane>
      </>
    );
  }
  return <Doors idleMinutes={face.data.idleMinutes} shopName={face.data.name} practice={face.data.practice} />;
}

/** Lets the person of this tab in again after a reload, if they are still signed in here; otherwise asks who works. */
function Doors({ idleMinutes, shopName, practice }: { idleMinutes: number; shopName: string; practice: boolean }) {
  const client = useClient();
  const { person } = useLink();
  const names = useAppQuery('staff/list-sign-in-names', {}, { enabled: person === null });
  const [remembered] = useState(rememberedPerson);
  const [tried, setTried] = useState(false);
  const me = useAppQuery('staff/get-me', {}, { enabled: person !== null });
  const [idle, wake] = useIdle(idleMinutes);

  useEffect(() => {
    if (tried || !names.data) return;
    const still = names.data.people.some((one) => one.staff === remembered && one.signedInHere);
    if (still) client.actAs(remembered);
    setTried(true);
  }, [tried, names.data, remembered, client]);
  useEffect(() => {
    if (me.error?.reply.kind !== 'not-allowed') return;
    rememberPerson(null);
    client.actAs(null);
  }, [me.error, client]);

  if (person === null || me.error) {
    if (!tried && names.isPending) return <Waiting />;
    return (
      <>
        <PlainBand words={shopName} practice={practice} />
        <main className={css.alone}>
          <SignIn />
        </main>
      </>
    );
  }
  // Another person starts on pages of their own; the same person finds theirs as they left it.
  return me.data ? <Frame key={person} locked={idle} onUnlock={wake} /> : <Waiting />;
}
