/** Who is on the line: the account, the person, the number. At most three; more is a case for more digits. */
import type { Found } from '../found.ts';
import css from './found-customers.module.css';
import { Hits } from './hits.tsx';

export function FoundCustomers({ customers }: { customers: Found['customers'] }) {
  return customers.slice(0, 3).map((customer) => (
    <div key={customer.customerId} className={css.customer}>
      <div>
        <b>{customer.matched === customer.name ? <Hits text={customer.name} hits={customer.hits} /> : customer.name}</b>
        <span>{customer.accountWords}</span>
      </div>
      <div>
        <b>{customer.person?.name ?? ''}</b>
        <span>{customer.person?.approveWords ?? ''}</span>
      </div>
      <div>
        <b>{customer.phone && <Hits text={customer.phone} hits={customer.phoneHits} />}</b>
        <span>{customer.lastRang ?? ''}</span>
      </div>
    </div>
  ));
}
