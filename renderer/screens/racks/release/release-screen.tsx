/** Handing over: count out, who took it, by which proof, and the money. */
import { useState } from 'react';
import { type Command, useAppCommand, useAppQuery } from '../../../client/use-app.ts';
import { useTyped } from '../../../client/use-draft.ts';
import { useMay } from '../../../client/use-me.ts';
import { invoiceAddress, ticketAddress } from '../../../kit/addresses.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { KeyHints } from '../../../kit/key-hints.tsx';
import { keysOf, useAct } from '../../../kit/keyboard.ts';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { Empty, PageName, Sheet, SheetBody, SheetFoot, TitleBlock, TitleCell } from '../../../kit/sheet.tsx';
import { CountOut } from './parts/count-out.tsx';
import { Released } from './parts/released.tsx';
import { UnpaidForm } from './parts/unpaid-form.tsx';
import { type Signed, WhoTakes } from './parts/who-takes.tsx';
import css from './release-screen.module.css';
import {
  type Change,
  EMPTY_RELEASE,
  isRelease,
  leaving,
  type ReleasePage,
  type ReleaseTyped,
  releaseInput,
  releaseMissing,
  rowKey,
} from './release-typed.ts';

export function ReleaseScreen({ number }: { number: number }) {
  const ticket = useAppQuery('tickets/get-ticket', { number });
  const ticketId = ticket.data?.ticketId;
  const page = useAppQuery(
    'racks/get-release',
    { ticketId: ticketId ?? 1 },
    { enabled: ticketId !== undefined, ticket: ticketId },
  );
  const error = ticket.error ?? page.error;
  if (error) return <ErrorNote error={error} acts={<Button href="#/racks">To the racks</Button>} />;
  if (!page.data) return <Waiting />;
  return <ReleaseOf key={page.data.ticketId} page={page.data} />;
}

const FIELDS = ['takenBy', 'personId', 'proof', 'proofWords', 'unworkedWhy'];

type Done = Readonly<{ releaseId: number; words: string }>;
const NOT_SIGNED: Signed = { sha256: null, onPaper: false };
const pieceWords = (count: number): string => `${count} ${count === 1 ? 'piece' : 'pieces'}`;

function ReleaseOf({ page }: { page: ReleasePage }) {
  const [typed, set] = useTyped(`release-${page.number}`, EMPTY_RELEASE, isRelease);
  const [done, setDone] = useState<Done | null>(null);
  const command = useAppCommand('racks/release-goods');
  const [signed, setSigned] = useState<Signed>(NOT_SIGNED);
  const change = (changes: Partial<ReleaseTyped>) => set((before) => ({ ...before, ...changes }));
  const input = releaseInput(page, typed, signed);
  const here = page.rows.filter((row) => !row.out).length;
  const finished = (released: Done) => {
    set(() => EMPTY_RELEASE);
    setSigned(NOT_SIGNED);
    setDone(released);
  };
  return (
    <div className={css.page}>
      <PageName>{`Release ${page.number}`}</PageName>
      <Head page={page} takenBy={typed.takenBy} />
      <div className={css.columns}>
        <Sheet
          title="Count out, with the customer watching"
          end={`${pieceWords(page.piecesIn)} came in, ${leaving(page.rows, typed).length} counted out now`}
          scroll
        >
          {page.identityInDoubt && (
            <Notice kind="ask">
              <b>Which casting is this?</b> Its identity is in doubt: it stays until that is cleared.
            </Notice>
          )}
          {page.rows.length === 0 && <Empty>Nothing of this ticket is in the house.</Empty>}
          <CountOut
            page={page}
            typed={typed}
            change={change}
            errors={rowErrors(page, input, command.error?.reply.fields ?? {})}
          />
          {page.oldParts === 'return' && here > 0 && (
            <p className={css.note}>Old parts go back to the customer: they asked for them.</p>
          )}
        </Sheet>
        {done || here === 0 ? (
          <Released page={page} done={done} onMore={here > 0 ? () => setDone(null) : undefined} />
        ) : (
          <HandOver
            page={page}
            typed={typed}
            change={change}
            signed={signed}
            onSigned={setSigned}
            input={input}
            command={command}
            onDone={finished}
          />
        )}
      </div>
      <KeyHints
        hints={[
          { keys: ['Enter'], words: 'all of this line is out' },
          { keys: [keysOf('go')], words: 'release' },
          { keys: [keysOf('back')], words: 'back' },
        ]}
      />
    </div>
  );
}

type HandOverProps = Readonly<{
  page: ReleasePage;
  typed: ReleaseTyped;
  change: Change;
  signed: Signed;
  onSigned: (signed: Signed) => void;
  input: ReturnType<typeof releaseInput>;
  command: Command<'racks/release-goods'>;
  onDone: (done: Done) => void;
}>;

/** Who takes it and the signature; the money that stands in the way, and the way past it. */
function HandOver({ page, typed, change, signed, onSigned, input, command, onDone }: HandOverProps) {
  const [unpaid, setUnpaid] = useState(false);
  const missing = releaseMissing(page.rows, typed, signed.onPaper || signed.sha256 !== null);
  const act = `Release ${pieceWords(leaving(page.rows, typed).length)}`;
  const fields = command.error?.reply.fields ?? {};
  const release = async () => {
    if (missing !== undefined || !page.money.clear) return;
    const released = await command.send(input);
    if (released) onDone(released);
  };
  useAct('go', unpaid ? undefined : () => void release());
  return (
    <Sheet title={unpaid ? 'Let it go unpaid' : 'Signature'} scroll>
      <SheetBody>
        <MoneyStrip page={page} onUnpaid={unpaid ? undefined : () => setUnpaid(true)} />
        <WhoTakes page={page} typed={typed} change={change} signed={signed} onSigned={onSigned} errors={fields} />
        <ErrorNote
          error={command.error}
          fieldsShown={[...FIELDS, ...Object.keys(fields).filter((path) => /^(castings|containers)\./.test(path))]}
        />
        {unpaid && (
          <UnpaidForm
            act={`${act} unpaid`}
            shut={missing}
            input={input}
            onDone={onDone}
            onClose={() => setUnpaid(false)}
          />
        )}
      </SheetBody>
      {!unpaid && (
        <SheetFoot>
          <GoButton
            keys={keysOf('go')}
            working={command.pending}
            shut={page.money.clear ? missing : 'Money is open: see above.'}
            onPress={() => void release()}
          >
            {act}
          </GoButton>
        </SheetFoot>
      )}
    </Sheet>
  );
}

/** Sentences of castings and bags by their line; the host counts them in the order they were sent. */
function rowErrors(
  page: ReleasePage,
  input: ReturnType<typeof releaseInput>,
  fields: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  const errors: Record<string, string> = {};
  for (const row of page.rows) {
    const bag = input.containers?.findIndex((one) => one.containerId === row.containerId) ?? -1;
    const casting = input.castings?.indexOf(row.castingId ?? -1) ?? -1;
    const path = row.containerId === null ? `castings.${casting}` : `containers.${bag}`;
    const sentence = fields[path];
    if (sentence !== undefined) errors[rowKey(row)] = sentence;
  }
  return errors;
}

function Head({ page, takenBy }: { page: ReleasePage; takenBy: string }) {
  return (
    <TitleBlock columns="auto minmax(0, 1.4fr) minmax(0, 1fr) auto auto">
      <TitleCell label="Release" big>
        {page.number}
      </TitleCell>
      <TitleCell label="Customer" note={page.phone}>
        {page.customer}
      </TitleCell>
      <TitleCell label="Collected by">{takenBy || page.releases[0]?.takenBy || 'not said yet'}</TitleCell>
      <TitleCell label="Ticket reads" note={<a href={ticketAddress(page.number)}>open it</a>}>
        {page.ticketWord}
      </TitleCell>
      <TitleCell label="Money">
        <span className={page.money.clear ? css.clear : css.owing}>{page.money.words}</span>
      </TitleCell>
    </TitleBlock>
  );
}

function MoneyStrip({ page, onUnpaid }: { page: ReleasePage; onUnpaid: (() => void) | undefined }) {
  const may = useMay();
  if (page.money.clear) return null;
  return (
    <Notice
      kind="ask"
      acts={
        <>
          {may.has('money:see') && <Button href={invoiceAddress(page.number)}>To the bill</Button>}
          {onUnpaid && (
            <Button kind="out" onPress={onUnpaid}>
              Let it go
            </Button>
          )}
        </>
      }
    >
      {page.money.why}
    </Notice>
  );
}
