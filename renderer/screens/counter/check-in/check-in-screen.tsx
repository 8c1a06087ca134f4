/** Checking in castings on one page: who and what they said, what arrived, what is asked, the promise, the signature. */
import { useState } from 'react';
import { useLocation } from 'wouter';
import { Button, GoButton } from '../../../kit/button.tsx';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Empty, PageName, Sheet, SheetFoot, SheetHead } from '../../../kit/sheet.tsx';
import { addCasting, castingWords, changeCasting, countedWords } from './changes.ts';
import css from './check-in-screen.module.css';
import { type SetTyped, useCheckInTyped, usePriceAndPromise, useSendCheckIn } from './hooks/use-check-in.ts';
import { useTakeUp } from './hooks/use-take-up.ts';
import { ArrivalList } from './parts/arrival-list.tsx';
import { BoxFields } from './parts/box-fields.tsx';
import { CastingIdentity } from './parts/casting-identity.tsx';
import { CastingList } from './parts/casting-list.tsx';
import { Condition } from './parts/condition.tsx';
import { PhotoFields } from './parts/photo-fields.tsx';
import { PromiseFields, SignFields } from './parts/promise-and-sign.tsx';
import { SetAsideList } from './parts/set-aside-list.tsx';
import { WhoFields } from './parts/who-fields.tsx';
import { WorkAsked } from './parts/work-asked.tsx';
import { placesOf, type Troubles } from './request.ts';
import { type CheckInTyped, isBegun } from './typed.ts';

export function CheckInScreen({
  customer,
  draft,
  enquiry,
}: {
  /** From find: who it is for. */ customer?: number | undefined;
  draft?: number | undefined;
  /** Number of the enquiry whose castings are here now. */
  enquiry?: number | undefined;
}) {
  const [, go] = useLocation();
  const { typed, set, setAside, clear } = useCheckInTyped();
  const takingUp = useTakeUp(typed, set, { customer, draft, enquiry });
  const price = usePriceAndPromise(typed, set);
  const { command, troubles, send } = useSendCheckIn(typed, clear);
  const refused = placesOf(command.error?.reply.fields ?? {}, typed);
  const [tried, setTried] = useState(false);
  const shown: Troubles = tried ? { ...refused, ...troubles } : refused;
  const first = Object.values(troubles)[0];
  // Where the host is away this page's own storage holds what is typed, and the page shows it again.
  const leave = () =>
    void setAside()
      .catch(() => undefined)
      .then(() => go('/counter'));
  const trySend = async () => {
    setTried(true);
    await send();
    requestAnimationFrame(() => document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
  };
  useAct('go', () => void trySend());
  useAct('print', () => void trySend());
  useAct('another-casting', () => set(addCasting));
  useAct('leave', leave);
  if (takingUp.error) return <ErrorNote error={takingUp.error} />;
  if (takingUp.waiting) return <Waiting words="Taking it up..." />;
  return (
    <div className={css.page}>
      <PageName>Check in castings</PageName>
      <WhoFields typed={typed} set={set} troubles={shown} />
      <div className={css.columns}>
        <CastingList typed={typed} set={set} troubles={shown} />
        <ChosenCasting typed={typed} set={set} troubles={shown} />
        <Sheet
          title="Work asked for"
          note={typed.castings.length > 1 ? `${typed.castings.length} castings` : undefined}
          scroll
        >
          <WorkAsked typed={typed} set={set} quote={price.quote} error={price.quoteError} troubles={shown} />
          <SheetHead title="Promise" />
          <PromiseFields typed={typed} set={set} suggestion={price.suggestion} troubles={shown} />
          <SignFields typed={typed} set={set} troubles={shown} />
          <ErrorNote
            error={command.error}
            fieldsShown={Object.keys(command.error?.reply.fields ?? {}).filter((path) => isBesideField(path))}
          />
          <SheetFoot>
            <Button keys={keysOf('leave')} onPress={leave}>
              Set aside
            </Button>
            <GoButton
              keys={keysOf('print')}
              working={command.pending}
              onPress={() => void trySend()}
              shut={isBegun(typed) ? first : 'Write who brings it.'}
            >
              {typed.signed === 'left_unsigned' ? 'Check in and print' : 'Sign and print'}
            </GoButton>
          </SheetFoot>
        </Sheet>
      </div>
      <KeyHints
        hints={[
          { keys: ['Tab'], words: 'next field' },
          { keys: [keysOf('another-casting')], words: 'another casting' },
          { keys: [keysOf('leave')], words: 'set aside, nothing is lost' },
        ]}
      />
    </div>
  );
}

/** Places whose sentence stands beside their own field; every other refusal is said above the buttons. */
const BESIDE =
  /^(castings\.\d+\.(type|material|position|castingNumber|tagNo|shopStamp|earlierStamps|ownMarks|dressWords)|customer|wishes\.\d+|ticket\.(orderNumber|historyWords|useWords|fuelWords|valveLift)|ceiling|promise)/;
const isBesideField = (path: string): boolean => BESIDE.test(path);

function ChosenCasting({ typed, set, troubles }: { typed: CheckInTyped; set: SetTyped; troubles: Troubles }) {
  const casting = typed.castings.find((one) => one.key === typed.at);
  if (!casting) {
    return (
      <Sheet title="What arrived" scroll>
        <Empty>Add a casting: its type, metal, pieces and condition stand here.</Empty>
        <SetAsideList at={typed.draft} />
      </Sheet>
    );
  }
  const change = (changes: Partial<typeof casting>) => set((before) => changeCasting(before, casting.key, changes));
  return (
    <Sheet key={casting.key} title={castingWords(typed, casting)} end={casting.typeText} scroll>
      <CastingIdentity casting={casting} change={change} troubles={troubles} />
      {!casting.bare && (
        <>
          <SheetHead title="What arrived" end={countedWords(casting)} />
          <ArrivalList casting={casting} change={change} />
          <BoxFields
            title="Bags and trays of this casting"
            boxes={casting.boxes}
            onBoxes={(boxes) => change({ boxes })}
          />
        </>
      )}
      <SheetHead title="Condition" note="touch the drawing where it is" end="seen before it is unpacked" />
      <Condition typed={typed} casting={casting} change={change} />
      <PhotoFields
        photos={casting.photos}
        onPhotos={(photosOf) =>
          set((before) => {
            const now = before.castings.find((one) => one.key === casting.key);
            return now ? changeCasting(before, casting.key, { photos: photosOf(now.photos) }) : before;
          })
        }
      />
    </Sheet>
  );
}
