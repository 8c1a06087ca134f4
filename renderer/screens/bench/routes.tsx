/** The bench: queue, casting, readings, findings, sign-off. Everything entered here is kept on the tablet first. */
import { useEffect, useState } from 'react';
import { Route, Switch } from 'wouter';
import { createOutbox, type Outbox } from '../../client/outbox.ts';
import { browserStorage } from '../../client/outbox-storage.ts';
import { useClient } from '../../client/use-app.ts';
import { OutboxContext } from '../../client/use-outbox.ts';
import { Waiting } from '../../kit/pane.tsx';
import { CastingScreen } from './casting-screen.tsx';
import { CentresScreen } from './centres-screen.tsx';
import { FoundScreen } from './found-screen.tsx';
import { rememberedCentre } from './hooks/centre-memory.ts';
import { PhotosScreen } from './photos-screen.tsx';
import { QueueScreen } from './queue-screen.tsx';
import { ReadingsScreen } from './readings-screen.tsx';
import { SignOffScreen } from './sign-off-screen.tsx';
import { TableScreen } from './table-screen.tsx';

export function Routes() {
  const client = useClient();
  const [outbox, setOutbox] = useState<Outbox | null>(null);
  useEffect(() => {
    const opened = createOutbox(client, browserStorage());
    setOutbox(opened);
    return opened.end;
  }, [client]);
  if (!outbox) return <Waiting />;
  return (
    <OutboxContext value={outbox}>
      <Switch>
        <Route path="/bench/centres">
          <CentresScreen />
        </Route>
        <Route path="/bench/centre/:centre">{({ centre }) => <QueueScreen centre={Number(centre)} />}</Route>
        <Route path="/bench/tag/:tag/found">{({ tag }) => <FoundScreen tag={Number(tag)} />}</Route>
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
    </OutboxContext>
  );
}

/** The queue this tablet showed last, or the benches to choose from. */
function FirstPage() {
  const centre = rememberedCentre();
  return centre === null ? <CentresScreen /> : <QueueScreen centre={centre} />;
}
