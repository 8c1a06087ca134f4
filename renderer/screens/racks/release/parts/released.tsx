/** After handing over: what left, what stays, and the paper of each time. */
import { useState } from 'react';
import { useAppCommand } from '../../../../client/use-app.ts';
import { useFormat } from '../../../../client/use-shop.ts';
import { ticketAddress } from '../../../../kit/addresses.ts';
import { Button, GoButton } from '../../../../kit/button.tsx';
import { keysOf, useAct } from '../../../../kit/keyboard.ts';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { type DrawnPaper, PaperPreview } from '../../../../kit/paper-preview.tsx';
import { Row, Rows } from '../../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetFoot, SheetHead } from '../../../../kit/sheet.tsx';
import type { ReleasePage } from '../release-typed.ts';

export function Released({
  page,
  done,
  onMore,
}: {
  page: ReleasePage;
  done: Readonly<{ releaseId: number; words: string }> | null;
  /** More of this ticket is here and may be handed over. */
  onMore: (() => void) | undefined;
}) {
  const format = useFormat();
  const print = useAppCommand('documents/print-paper');
  const [paper, setPaper] = useState<DrawnPaper | null>(null);
  const latest = done?.releaseId ?? page.releases[0]?.releaseId;
  const draw = (releaseId: number) =>
    void print.send({ wish: { paper: 'release', releaseId } }).then((drawn) => drawn && setPaper(drawn));
  useAct('go', latest !== undefined && !paper ? () => draw(latest) : undefined);
  if (paper) {
    return <PaperPreview paper={paper} acts={<Button onPress={() => setPaper(null)}>Back</Button>} />;
  }
  return (
    <Sheet title="Handed over" end={page.ticketWord} scroll>
      <SheetBody>
        {done && (
          <p role="status">
            <b>{done.words}</b> The ticket reads {page.ticketWord}.
          </p>
        )}
        <ErrorNote error={print.error} />
      </SheetBody>
      <SheetHead title="Each time" />
      {page.releases.length === 0 && <Empty>Nothing was handed over yet.</Empty>}
      <Rows label="Each time something was handed over">
        {page.releases.map((one) => (
          <Row
            key={one.releaseId}
            title={`${one.takenBy}, ${one.proofWords}`}
            note={`${format.at(one.at)}, ${one.by}: ${one.labels.join(', ')}${one.unpaidWhy ? `. Unpaid: ${one.unpaidWhy}` : ''}`}
            end={one.pieces === 1 ? '1 piece' : `${one.pieces} pieces`}
            endNote="draw the paper"
            onOpen={() => draw(one.releaseId)}
          />
        ))}
      </Rows>
      <SheetFoot>
        {latest !== undefined && (
          <GoButton keys={keysOf('go')} working={print.pending} onPress={() => draw(latest)}>
            Print the release paper
          </GoButton>
        )}
        {onMore && <Button onPress={onMore}>Hand over more</Button>}
        <Button href={ticketAddress(page.number)}>To the ticket</Button>
      </SheetFoot>
    </Sheet>
  );
}
