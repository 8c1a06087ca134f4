/** The bench: queue, casting, readings, findings, sign-off. Everything entered here is kept on the tablet first. */
import { lazy, Suspense, useEffect } from 'react';
import { Route, Switch } from 'wouter';
import { useClient } from '../../client/use-app.ts';
import { OutboxContext, outboxOf } from '../../client/use-outbox.ts';
import { Waiting } from '../../kit/pane.tsx';
import { CastingScreen } from './casting-screen.tsx';
import { CentresScreen } from './centres-screen.tsx';
import { rememberedCentre } from './hooks/centre-memory.ts';
import { QueueScreen } from './queue-screen.tsx';

// Fetched while the hand is still at the queue, so that they are there when the line is not.
const pages = {
  deck: () => import('./pages/deck-screen.tsx'),
  found: () => import('./pages/found-screen.tsx'),
  limits: () => import('./pages/limits-screen.tsx'),
  photos: () => import('./pages/photos-screen.tsx'),
  readings: () => import('./pages/readings-screen.tsx'),
  signOff: () => import('./pages/sign-off-screen.tsx'),
  table: () => import('./pages/table-screen.tsx'),
};
const DeckScreen = lazy(async () => ({ default: (await pages.deck()).DeckScreen }));
const FoundScreen = lazy(async () => ({ default: (await pages.found()).FoundScreen }));
const LimitsScreen = lazy(async () => ({ default: (await pages.limits()).LimitsScreen }));
const PhotosScreen = lazy(async () => ({ default: (await pages.photos()).PhotosScreen }));
const ReadingsScreen = lazy(async () => ({ default: (await pages.readings()).ReadingsScreen }));
const SignOffScreen = lazy(async () => ({ default: (await pages.signOff()).SignOffScreen }));
const TableScreen = lazy(async () => ({ default: (await pages.table()).TableScreen }));
const AFTER_MS = 1500;

export function Routes() {
  const client = useClient();
  const outbox = outboxOf(client);
  useEffect(() => {
    const timer = setTimeout(() => {
      for (const fetchPage of Object.values(pages)) void fetchPage().catch(() => undefined);
    }, AFTER_MS);
    return () => clearTimeout(timer);
  }, []);
  return (
    <OutboxContext value={outbox}>
      <Suspense fallback={<Waiting />}>
        <Switch>
          <Route path="/bench/centres">
            <CentresScreen />
          </Route>
          <Route path="/bench/centre/:centre">{({ centre }) => <QueueScreen centre={Number(centre)} />}</Route>
          <Route path="/bench/tag/:tag/deck/:face?">
            {({ tag, face }) => <DeckScreen tag={Number(tag)} face={face ?? null} />}
          </Route>
          <Route path="/bench/tag/:tag/found">{({ tag }) => <FoundScreen tag={Number(tag)} />}</Route>
          <Route path="/bench/tag/:tag/limits">{({ tag }) => <LimitsScreen tag={Number(tag)} />}</Route>
          <Route path="/bench/tag/:tag/photos">{({ tag }) => <PhotosScreen tag={Number(tag)} />}</Route>
          <Route path="/bench/tag/:tag/readings">{({ tag }) => <ReadingsScreen tag={Number(tag)} />}</Route>
          <Route path="/bench/tag/:tag/sign-off">{({ tag }) => <SignOffScreen tag={Number(tag)} />}</Route>
          <Route path="/bench/tag/:tag/table/:table">
            {({ tag, table }) => <TableScreen key={`${tag}-${table}`} tag={Number(tag)} table={table} />}
          </Route>
          <Route path="/bench/tag/:tag">{({ tag }) => <CastingScreen key={tag} tag={Number(tag)} />}</Route>
          <Route>
            <FirstPage />
          </Route>
        </Switch>
      </Suspense>
    </OutboxContext>
  );
}

/** The queue this tablet showed last, or the benches to choose from. */
function FirstPage() {
  const centre = rememberedCentre();
  return centre === null ? <CentresScreen /> : <QueueScreen centre={centre} />;
}
