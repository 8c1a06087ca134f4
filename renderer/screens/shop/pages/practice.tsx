/** The door to the practice shop, and back out of it. */
import { useAppCommand } from '../../../client/use-app.ts';
import { useFace } from '../../../client/use-shop.ts';
import { GoButton } from '../../../kit/button.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Sheet, SheetBody, SheetFoot } from '../../../kit/sheet.tsx';
import css from './columns.module.css';

export function PracticePage() {
  const face = useFace().data;
  const open = useAppCommand('shop/open-practice-shop');
  const leave = useAppCommand('shop/leave-practice-shop');
  if (face?.practice) {
    return (
      <div className={css.two}>
        <Sheet title="You are in the practice shop">
          <SheetBody>
            <p>
              Everything here is invented. PRACTICE stands in the band and on every paper, and nothing of it reaches the
              shop.
            </p>
            <ErrorNote error={leave.error} />
          </SheetBody>
          <SheetFoot>
            <GoButton working={leave.pending} onPress={() => void leave.send({})}>
              Back to the shop
            </GoButton>
          </SheetFoot>
        </Sheet>
      </div>
    );
  }
  return (
    <div className={css.two}>
      <Sheet title="Practice shop">
        <SheetBody>
          <p>
            An invented shop on an invented day, with tickets in every state. It is kept apart from this shop: PRACTICE
            stands in the band and on every paper, and what is done there changes nothing here.
          </p>
          <p>It opens on every screen of this program, and you come back by the same page.</p>
          <ErrorNote error={open.error} />
        </SheetBody>
        <SheetFoot>
          <GoButton working={open.pending} onPress={() => void open.send({})}>
            Open the practice shop
          </GoButton>
        </SheetFoot>
      </Sheet>
    </div>
  );
}
