/** The pages of the Counter area; those a counter opens seldom are fetched when they are. */
import { lazy } from 'react';
import { Route, Switch } from 'wouter';
import { Pane } from '../../kit/pane.tsx';
import { HomeScreen } from './home-screen.tsx';

const CheckIn = lazy(async () => ({ default: (await import('./check-in/check-in-screen.tsx')).CheckInScreen }));
const Ticket = lazy(async () => ({ default: (await import('./ticket/ticket-screen.tsx')).TicketScreen }));

export function Routes() {
  return (
    <Pane>
      <Switch>
        <Route path="/counter" component={HomeScreen} />
        <Route path="/counter/check-in">
          <CheckIn />
        </Route>
        <Route path="/counter/check-in/for/:customer">
          {({ customer }) => <CheckIn customer={Number(customer)} />}
        </Route>
        <Route path="/counter/check-in/:draft">{({ draft }) => <CheckIn draft={Number(draft)} />}</Route>
        <Route path="/counter/ticket/:number">{({ number }) => <Ticket number={Number(number)} />}</Route>
      </Switch>
    </Pane>
  );
}
