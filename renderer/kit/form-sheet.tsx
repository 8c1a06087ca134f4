/** The shape of a form at the right: fields, what was refused, the go button and the way out. Ctrl Enter is the go button. */
import type { RequestRefused } from '../client/request-refused.ts';
import { Button, GoButton } from './button.tsx';
import { keysOf, useAct } from './keyboard.ts';
import { ErrorNote } from './notice.tsx';
import { type AsksPin, PinStrip } from './pin-strip.tsx';
import { Sheet, SheetBody, SheetFoot } from './sheet.tsx';

export function FormSheet({
  title,
  note,
  act,
  command,
  shut,
  fieldsShown = [],
  onGo,
  onDone,
  children,
}: {
  title: string;
  note?: React.ReactNode;
  /** Words of the go button: the act and the amount. */
  act: string;
  command: AsksPin & Readonly<{ error: RequestRefused | null; pending: boolean }>;
  shut?: string | undefined;
  fieldsShown?: readonly string[];
  onGo: () => void;
  /** The way out; none where there is nothing to leave. */
  onDone?: (() => void) | undefined;
  children: React.ReactNode;
}) {
  useAct('go', shut === undefined && !command.pending ? onGo : undefined);
  return (
    <Sheet title={title} note={note} scroll>
      <SheetBody>
        {children}
        <PinStrip ask={command} act={act} />
        {!command.wantsPin && <ErrorNote error={command.error} fieldsShown={fieldsShown} />}
      </SheetBody>
      {!command.wantsPin && (
        <SheetFoot>
          <GoButton keys={keysOf('go')} working={command.pending} shut={shut} onPress={onGo}>
            {act}
          </GoButton>
          {onDone && (
            <Button keys={keysOf('leave')} onPress={onDone}>
              Not now
            </Button>
          )}
        </SheetFoot>
      )}
    </Sheet>
  );
}
