/** The pages of the Books area: what is owed, an account, the bill of a ticket. */
import { lazy } from 'react';
import { Route, Switch } from 'wouter';
import { Pane } from '../../kit/pane.tsx';
import { OwedScreen } from './owed-screen.tsx';

const Account = lazy(async () => ({ default: (await import('./account-screen.tsx')).AccountScreen }));
const Invoice = lazy(async () => ({ default: (await import('./invoice-screen.tsx')).InvoiceScreen }));

export function Routes() {
  return (
    <Pane>
      <Switch>
        <Route path="/books" component={OwedScreen} />
        <Route path="/books/account/:id">{({ id }) => <Account key={id} id={Number(id)} />}</Route>
        <Route path="/books/invoice/:number">{({ number }) => <Invoice key={number} number={Number(number)} />}</Route>
      </Switch>
    </Pane>
  );
}
