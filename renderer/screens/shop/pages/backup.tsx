/** Backups: the last one, another one now, and putting one in place of what is here. */
import { useEffect, useState } from 'react';
import type { App } from '#core/app-contract.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { formatNumber } from '#core/kernel/format.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { PinStrip } from '../../../kit/pin-strip.tsx';
import { Row, Rows } from '../../../kit/rows.tsx';
import { Empty, Sheet, SheetBody, SheetFoot, SheetHead } from '../../../kit/sheet.tsx';
import css from './columns.module.css';

type Backup = OutputOf<App['backup/list-backups']>['backups'][number];

export function BackupPage() {
  const list = useAppCommand('backup/list-backups');
  const [backups, setBackups] = useState<readonly Backup[] | null>(null);
  const [at, setAt] = useState<string | null>(null);
  const { send } = list;
  useEffect(() => {
    let there = true;
    void send({}).then((found) => {
      if (there && found) setBackups(found.backups);
    });
    return () => {
      there = false;
    };
  }, [send]);
  const again = () => void send({}).then((found) => found && setBackups(found.backups));
  return (
    <div className={css.two}>
      <BackupList backups={backups} at={at} onChoose={setAt} />
      <Sheet title="Keep a backup" scroll>
        <MakeOne last={backups?.[0]} onMade={again} />
        <ErrorNote error={list.error} />
        {at !== null && (
          <>
            <SheetHead title="Restore" note={at} />
            <Restore key={at} file={at} onDone={() => setAt(null)} />
          </>
        )}
      </Sheet>
    </div>
  );
}

const sizeWords = (bytes: number, language: string): string =>
  `${formatNumber(Math.ceil(bytes / 1_000_000), { language })} MB`;

function BackupList({
  backups,
  at,
  onChoose,
}: {
  backups: readonly Backup[] | null;
  at: string | null;
  onChoose: (file: string) => void;
}) {
  const format = useFormat();
  return (
    <Sheet title="Backups" note="one each day the program runs; each was opened and checked" scroll>
      {backups === null && <Empty>Looking into the folder...</Empty>}
      {backups?.length === 0 && <Empty>No backup is kept yet. Make one now.</Empty>}
      <Rows label="Backups">
        {backups?.map((one) => (
          <Row
            key={one.file}
            title={<b>{format.at(one.at)}</b>}
            note={one.file}
            end={sizeWords(one.bytes, format.settings.language)}
            endNote="restore"
            selected={one.file === at}
            onOpen={() => onChoose(one.file)}
          />
        ))}
      </Rows>
    </Sheet>
  );
}

function MakeOne({ last, onMade }: { last: Backup | undefined; onMade: () => void }) {
  const format = useFormat();
  const make = useAppCommand('backup/make-backup');
  const [made, setMade] = useState<string | null>(null);
  return (
    <>
      <SheetBody>
        <p>{last ? `The last backup is of ${format.at(last.at)}.` : 'No backup is kept yet.'}</p>
        <p>
          Copy the folder of the workspace to a stick or another computer as well: a backup beside the original burns
          with it.
        </p>
        {made && <Notice>Kept and checked: {made}</Notice>}
        <ErrorNote error={make.error} />
      </SheetBody>
      <SheetFoot>
        <GoButton
          working={make.pending}
          onPress={() =>
            void make.send({}).then((kept) => {
              if (!kept) return;
              setMade(kept.file);
              onMade();
            })
          }
        >
          Make a backup now
        </GoButton>
      </SheetFoot>
    </>
  );
}

function Restore({ file, onDone }: { file: string; onDone: () => void }) {
  const restore = useAppCommand('backup/restore-backup');
  const act = `Put ${file} in place`;
  return (
    <SheetBody>
      <Notice kind="ask">
        <b>Everything done since then leaves the screens.</b> What is replaced is kept aside in the folder of the
        workspace. Only the owner at the computer that keeps it can do this; every screen starts again.
      </Notice>
      <PinStrip ask={restore} act={act} />
      {!restore.wantsPin && (
        <>
          <ErrorNote error={restore.error} />
          <Button kind="out" working={restore.pending} onPress={() => void restore.send({ file })}>
            {act}
          </Button>
          <Button onPress={onDone}>Not now</Button>
        </>
      )}
    </SheetBody>
  );
}
