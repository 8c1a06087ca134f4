/** The first day: fill in the shop's title block, see it print, name the first person, go through one of two doors. */
import { useState } from 'react';
import { useLocation } from 'wouter';
import { useAppCommand, useClient } from '../../client/use-app.ts';
import { keepTyped, useTyped } from '../../client/use-draft.ts';
import { Button, GoButton } from '../../kit/button.tsx';
import { keysOf, useAct } from '../../kit/keyboard.ts';
import { ErrorNote } from '../../kit/notice.tsx';
import { PageName, Sheet, SheetHead } from '../../kit/sheet.tsx';
import css from './first-run-screen.module.css';
import { EMPTY_SHOP, firstMissing, isShopTyped, type ShopTyped, shopInput } from './first-run-text.ts';
import { HowItPrints } from './parts/how-it-prints.tsx';
import { FirstPersonFields, ShopFields } from './parts/shop-fields.tsx';

const SHOWN = [
  'name',
  'address',
  'phone',
  'taxNumber',
  'currencyCode',
  'currencySign',
  'units',
  'paper',
  'personName',
  'personInitials',
  'pin',
];

export function FirstRunScreen() {
  const client = useClient();
  const [, go] = useLocation();
  const [shop, change] = useTyped('first-run', EMPTY_SHOP, isShopTyped);
  // A PIN is never kept, not even in this page's storage.
  const [pin, setPin] = useState('');
  const open = useAppCommand('shop/first-run');
  const signIn = useAppCommand('staff/sign-in');
  const practice = useAppCommand('shop/open-practice-shop');
  const set = (changes: Partial<ShopTyped>) => change((before) => ({ ...before, ...changes }));
  const fields = open.error?.reply.fields ?? {};

  const start = async () => {
    const done = await open.send(shopInput(shop, pin, Intl.DateTimeFormat().resolvedOptions().timeZone));
    if (!done) return;
    keepTyped('first-run', null);
    const answer = await signIn.send({ staff: done.staff, pin });
    if (answer?.signedIn) client.actAs(answer.me.staff);
    go('/counter/check-in');
  };

  useAct('go', firstMissing(shop, pin) === undefined ? () => void start() : undefined);

  return (
    <main className={css.page}>
      <PageName>First day</PageName>
      <Sheet title="Fill in the title block" note="it heads every sheet you print. Change it any day in Shop" scroll>
        <ShopFields shop={shop} set={set} errors={fields} />
        <SheetHead title="Who works here" note="you are the owner; the others follow in Shop, People" />
        <FirstPersonFields shop={shop} set={set} pin={pin} setPin={setPin} errors={fields} />
      </Sheet>
      <div className={css.right}>
        <HowItPrints shop={shop} />
        <Sheet title="Counter, before the first casting">
          <div className={css.doors}>
            <EmptyDay />
            <b>Nothing is promised today.</b>
            <p>When a casting comes over the counter, hang its tag here.</p>
            <GoButton
              keys={keysOf('go')}
              onPress={() => void start()}
              working={open.pending || signIn.pending}
              shut={firstMissing(shop, pin)}
            >
              Open the shop, check in castings
            </GoButton>
            <Button kind="out" onPress={() => void practice.send({})} working={practice.pending}>
              Try it with a practice shop. It is kept apart and thrown away
            </Button>
            {practice.pending && <p role="status">The practice shop is being made. That takes up to a minute, once.</p>}
            <ErrorNote error={open.error ?? signIn.error ?? practice.error} fieldsShown={SHOWN} />
          </div>
        </Sheet>
      </div>
    </main>
  );
}

/** An empty day with one tag not hung yet. */
function EmptyDay() {
  const ticks = Array.from({ length: 51 }, (_, i) => i);
  return (
    <svg viewBox="0 0 520 92" width="100%" aria-hidden="true">
      {ticks.map((i) => (
        <path key={i} d={`M${10 + i * 10} 30v-${i % 10 === 0 ? 20 : i % 5 === 0 ? 13 : 7}`} stroke="var(--ink)" />
      ))}
      <path d="M10 30H510" stroke="var(--ink)" strokeWidth="2" />
      <path d="M260 30V46" stroke="var(--ink)" strokeWidth="1.4" />
      <path d="M222 54l8-8h76v40h-76l-8-8z" fill="none" stroke="var(--edge)" strokeWidth="2" strokeDasharray="5 4" />
      <circle cx="234" cy="66" r="5" fill="none" stroke="var(--edge)" strokeWidth="2" />
    </svg>
  );
}
