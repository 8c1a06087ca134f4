/** The pages of the Racks area: places, and handing over. */
import { lazy } from 'react';
import { Route, Switch } from 'wouter';
import { Pane } from '../../kit/pane.tsx';
import { RacksScreen } from './racks-screen.tsx';

const Release = lazy(async () => ({ default: (await import('./release/release-screen.tsx')).ReleaseScreen }));

export function Routes() {
  return (
    <Pane>
      <Switch>
        <Route path="/racks">
          <RacksScreen />
        </Route>
        <Route path="/racks/place/:code">
          {({ code }) => <RacksScreen key={code} at={decodeURIComponent(code)} />}
        </Route>
        <Route path="/racks/release/:number">{({ number }) => <Release number={Number(number)} />}</Route>
      </Switch>
    </Pane>
  );
}
