/** The frame around every page: band, page, foot. Find lies over the page, which stays as it was behind it. */
import { lazy, Suspense, useEffect, useMemo, useRef, useState } from 'react';
import { Route, Switch, useLocation } from 'wouter';
import { useClient, useLink } from '../client/use-app.ts';
import { useMay, useMe } from '../client/use-me.ts';
import { useFace, useFormat } from '../client/use-shop.ts';
import { classes } from '../kit/class-names.ts';
import { useAct } from '../kit/keyboard.ts';
import { Notice } from '../kit/notice.tsx';
import { Pane, Waiting } from '../kit/pane.tsx';
import { type Slots, SlotsContext } from '../kit/slots.tsx';
import { type Area, areasFor } from './areas.ts';
import { Band } from './band.tsx';
import css from './frame.module.css';
import { KeyList } from './key-list.tsx';
import { useLight } from './light.ts';
import { PeopleStrip } from './people-strip.tsx';
import { SignIn } from './sign-in.tsx';
import { useFind } from './use-find.ts';

const NO_SLOTS: Slots = { title: null, act: null, keys: null };

const FindPane = lazy(async () => ({ default: (await import('../screens/find/find-pane.tsx')).FindPane }));

export function Frame({
  locked,
  onUnlock,
}: {
  /** Idle too long: the page waits behind the sign-in. */ locked: boolean;
  onUnlock: () => void;
}) {
  const face = useFace().data;
  const may = useMay();
  const shown = useMemo(() => areasFor(may), [may]);
  const [location, go] = useLocation();
  const at = location.split('/')[1];
  const bench = at === 'bench';
  const find = useFind();
  const [strip, setStrip] = useState<'people' | 'keys' | null>(null);
  const slots = useSlots();
  useAreaKeys(shown, go);
  useAct('find', find.ask);
  useAct('keys', () => setStrip((open) => (open === 'keys' ? null : 'keys')));
  useAct('back', () => window.history.back());
  useAct('leave', strip ? () => setStrip(null) : undefined);
  useEffect(() => {
    document.documentElement.dataset.screen = bench ? 'bench' : 'desk';
  }, [bench]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new page closes what lay over the old one.
  useEffect(() => {
    setStrip(null);
    find.close();
  }, [location]);

  return (
    <SlotsContext value={slots.places}>
      <div className={classes(css.frame, bench && css.bench)}>
        <Band
          areas={shown}
          at={at}
          practice={face?.practice ?? false}
          bench={bench}
          find={may.has('find:see') ? find.box : null}
          who={
            <Who onPress={() => setStrip((open) => (open === 'people' ? null : 'people'))} open={strip === 'people'} />
          }
          titleRef={slots.setTitle}
          actRef={slots.setAct}
        />
        <div className={css.bar}>
          <LostNotice />
          {strip === 'people' && <PeopleStrip areas={bench ? shown : []} onDone={() => setStrip(null)} />}
          {strip === 'keys' && <KeyList onClose={() => setStrip(null)} />}
        </div>
        {locked && (
          <main className={css.main}>
            <SignIn onIn={onUnlock} />
          </main>
        )}
        {!locked && find.open && (
          <main className={css.main}>
            <Pane>
              <FindPane text={find.box.text} onLeave={find.close} />
            </Pane>
          </main>
        )}
        {/* A page that is covered keeps what is typed, and keeps its hands off the band and the foot. */}
        <SlotsContext value={locked || find.open ? NO_SLOTS : slots.places}>
          <Page areas={shown} hidden={locked || find.open} />
        </SlotsContext>
        <Foot keysRef={slots.setKeys} />
      </div>
    </SlotsContext>
  );
}

function useSlots() {
  const [title, setTitle] = useState<Element | null>(null);
  const [act, setAct] = useState<Element | null>(null);
  const [keys, setKeys] = useState<Element | null>(null);
  const places = useMemo<Slots>(() => ({ title, act, keys }), [title, act, keys]);
  return { places, setTitle, setAct, setKeys };
}

function useAreaKeys(shown: readonly Area[], go: (path: string) => void): void {
  const lead = (key: Area['key']) => {
    const area = shown.find((one) => one.key === key);
    return area && (() => go(area.path));
  };
  const counter = lead('counter');
  useAct('area-1', counter);
  useAct('area-2', lead('bench'));
  useAct('area-3', lead('racks'));
  useAct('area-4', lead('books'));
  useAct('area-5', lead('shop'));
  useAct('check-in', counter && (() => go('/counter/check-in')));
}

function Page({ areas, hidden }: { areas: readonly Area[]; hidden: boolean }) {
  const home = areas[0];
  return (
    <main className={css.main} hidden={hidden}>
      <Pane>
        <Switch>
          {areas.map((area) => (
            <Route key={area.key} path={`${area.path}/*?`}>
              <Suspense fallback={<Waiting />}>
                <area.Routes />
              </Suspense>
            </Route>
          ))}
          <Route>
            {home ? (
              <GoTo path={home.path} />
            ) : (
              <Waiting words="Nothing here is yours to see. Ask the owner for a role." />
            )}
          </Route>
        </Switch>
      </Pane>
    </main>
  );
}

function GoTo({ path }: { path: string }) {
  const [, go] = useLocation();
  useEffect(() => go(path, { replace: true }), [go, path]);
  return null;
}

function Who({ onPress, open }: { onPress: () => void; open: boolean }) {
  const me = useMe();
  const format = useFormat();
  const client = useClient();
  const [now, setNow] = useState(client.now);
  useEffect(() => {
    const timer = setInterval(() => setNow(client.now()), 10_000);
    return () => clearInterval(timer);
  }, [client]);
  return (
    <button type="button" className={css.who} onClick={onPress} aria-expanded={open}>
      {me?.name ?? ''} <small>{format.at(now)}</small>
    </button>
  );
}

function LostNotice() {
  const { lostAt } = useLink();
  const format = useFormat();
  if (!lostAt) return null;
  return (
    <Notice kind="ask">
      <b>The shop computer is not reached since {format.clock(lostAt).slice(0, -3)}.</b> What you type stays on this
      page; it is sent when you keep it again.
    </Notice>
  );
}

function Foot({ keysRef }: { keysRef: (place: Element | null) => void }) {
  const { keptAt } = useLink();
  const format = useFormat();
  const [light, switchLight] = useLight();
  const said = useRef<HTMLSpanElement>(null);
  useAct('kept', () => said.current?.focus());
  return (
    <footer className={css.foot}>
      <span className={css.keys} ref={keysRef} />
      <span className={css.kept} role="status" tabIndex={-1} ref={said}>
        {keptAt ? `Kept ${format.clock(keptAt)}` : ''}
      </span>
      <button type="button" className={css.light} onClick={switchLight}>
        {light === 'day' ? 'Evening light' : 'Day light'}
      </button>
    </footer>
  );
}
