/** A paper that was drawn: seen on the screen first, then printed or kept as a file; what became of it is kept. */
import { useRef, useState } from 'react';
import { isDesktop, printOnDesktop, saveOnDesktop } from '../client/desktop.ts';
import { RequestRefused } from '../client/request-refused.ts';
import { fileUrl } from '../client/transport.ts';
import { useAppCommand } from '../client/use-app.ts';
import { Button, GoButton } from './button.tsx';
import { keysOf, useAct } from './keyboard.ts';
import { ErrorNote } from './notice.tsx';
import css from './paper-preview.module.css';
import { Sheet, SheetFoot } from './sheet.tsx';

/** A paper as `documents/print-paper` gives it back. */
export type DrawnPaper = Readonly<{ documentId: number; sha256: string; fileName: string; words: string }>;

export function PaperPreview({
  paper,
  working = false,
  acts,
}: {
  paper: DrawnPaper;
  /** The next one is being drawn. */
  working?: boolean;
  /** More buttons in the foot, before those of the paper. */
  acts?: React.ReactNode;
}) {
  const frame = useRef<HTMLIFrameElement>(null);
  const record = useAppCommand('documents/record-printing');
  const [refused, setRefused] = useState<RequestRefused | null>(null);
  const keep = (outcome: 'printed' | 'kept_as_file' | 'failed' | 'handed_to_viewer') =>
    void record.send({ documentId: paper.documentId, outcome });
  const outside = async (act: () => Promise<void>) => {
    setRefused(null);
    try {
      await act();
    } catch (thrown) {
      if (!(thrown instanceof RequestRefused)) throw thrown;
      setRefused(thrown);
      keep('failed');
    }
  };
  const file = { sha256: paper.sha256, name: paper.fileName };
  const print = () =>
    void outside(async () => {
      if (isDesktop()) keep((await printOnDesktop(file)) ? 'printed' : 'failed');
      else {
        // The browser's own dialog follows; whether paper came out only the person knows.
        frame.current?.contentWindow?.print();
        keep('handed_to_viewer');
      }
    });
  const save = () =>
    void outside(async () => {
      if (isDesktop() && (await saveOnDesktop(file))) keep('kept_as_file');
    });
  useAct('print', print);
  return (
    <Sheet title={paper.words} end={working ? 'drawing the next...' : undefined}>
      <iframe ref={frame} className={css.paper} src={fileUrl(paper.sha256)} title={paper.words} />
      <ErrorNote error={refused ?? record.error} />
      <SheetFoot>
        {acts}
        {isDesktop() ? (
          <Button onPress={save}>Keep as file</Button>
        ) : (
          <a
            className={css.save}
            href={fileUrl(paper.sha256)}
            download={paper.fileName}
            onClick={() => keep('kept_as_file')}
          >
            Keep as file
          </a>
        )}
        <GoButton keys={keysOf('print')} onPress={print}>
          Print
        </GoButton>
      </SheetFoot>
    </Sheet>
  );
}
