/** The pages of the Counter area. */
import { Route, Switch } from 'wouter';
import { HomeScreen } from './home-screen.tsx';

export function Routes() {
  return (
    <Switch>
      <Route path="/counter" component={HomeScreen} />
    </Switch>
  );
}
