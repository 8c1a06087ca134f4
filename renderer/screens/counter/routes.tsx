/** The pages of the Counter area; all but the first are fetched when they are opened. */
import { lazy } from 'react';
import { Route, Switch } from 'wouter';
import { Pane } from '../../kit/pane.tsx';
import { HomeScreen } from './home-screen.tsx';

const CheckIn = lazy(async () => ({ default: (await import('./check-in/check-in-screen.tsx')).CheckInScreen }));
const Ticket = lazy(async () => ({ default: (await import('./ticket/ticket-screen.tsx')).TicketScreen }));
const Papers = lazy(async () => ({ default: (await import('./papers/papers-screen.tsx')).PapersScreen }));
const Asked = lazy(async () => ({ default: (await import('./asked/asked-screen.tsx')).AskedScreen }));
const Ask = lazy(async () => ({ default: (await import('./asked/ask-screen.tsx')).AskScreen }));
const Quote = lazy(async () => ({ default: (await import('./quote/quote-screen.tsx')).QuoteScreen }));
const Customer = lazy(async () => ({ default: (await import('./customer/customer-screen.tsx')).CustomerScreen }));
const Quick = lazy(async () => ({ default: (await import('./quick/quick-screen.tsx')).QuickScreen }));

export function Routes() {
  return (
    <Pane>
      <Switch>
        <Route path="/counter" component={HomeScreen} />
        <Route path="/counter/quote">
          <Quote />
        </Route>
        <Route path="/counter/quick">
          <Quick />
        </Route>
        <Route path="/counter/customer/:id">{({ id }) => <Customer id={Number(id)} />}</Route>
        <Route path="/counter/check-in">
          <CheckIn />
        </Route>
        <Route path="/counter/check-in/for/:customer">
          {({ customer }) => <CheckIn customer={Number(customer)} />}
        </Route>
        <Route path="/counter/check-in/enquiry/:enquiry">
          {({ enquiry }) => <CheckIn enquiry={Number(enquiry)} />}
        </Route>
        <Route path="/counter/check-in/:draft">{({ draft }) => <CheckIn draft={Number(draft)} />}</Route>
        <Route path="/counter/ticket/:number">{({ number }) => <Ticket number={Number(number)} />}</Route>
        <Route path="/counter/ticket/:number/papers">{({ number }) => <Papers number={Number(number)} />}</Route>
        <Route path="/counter/ticket/:number/papers/pile">
          {({ number }) => <Papers number={Number(number)} pile />}
        </Route>
        <Route path="/counter/ticket/:number/ask/:tag">
          {({ number, tag }) => <Ask number={Number(number)} tag={Number(tag)} />}
        </Route>
        <Route path="/counter/ticket/:number/added/:question">
          {({ number, question }) => <Asked number={Number(number)} question={Number(question)} />}
        </Route>
      </Switch>
    </Pane>
  );
}
