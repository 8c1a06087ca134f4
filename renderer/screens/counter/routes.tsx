/** The pages of the Counter area. */
import { Route, Switch } from 'wouter';
import { CheckInScreen } from './check-in/check-in-screen.tsx';
import { HomeScreen } from './home-screen.tsx';

export function Routes() {
  return (
    <Switch>
      <Route path="/counter" component={HomeScreen} />
      <Route path="/counter/check-in">
        <CheckInScreen />
      </Route>
      <Route path="/counter/check-in/for/:customer">
        {({ customer }) => <CheckInScreen customer={Number(customer)} />}
      </Route>
      <Route path="/counter/check-in/:draft">{({ draft }) => <CheckInScreen draft={Number(draft)} />}</Route>
    </Switch>
  );
}
