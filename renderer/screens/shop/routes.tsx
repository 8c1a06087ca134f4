/** The pages of the Shop area, one a tab. */
import { Route, Switch } from 'wouter';
import { Pane } from '../../kit/pane.tsx';
import { ShopScreen } from './shop-screen.tsx';

export function Routes() {
  return (
    <Pane>
      <Switch>
        <Route path="/shop">
          <ShopScreen tab="title-block" />
        </Route>
        <Route path="/shop/:tab">{({ tab }) => <ShopScreen tab={tab} />}</Route>
      </Switch>
    </Pane>
  );
}
