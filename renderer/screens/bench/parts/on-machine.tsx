/** What is on the machine now, with the three things a hand does next. */
import { useAppCommand } from '../../../client/use-app.ts';
import { benchAddress } from '../../../kit/addresses.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { Tag } from '../../../kit/tag.tsx';
import { foundAddress } from '../bench-addresses.ts';
import type { QueueLine } from '../bench-casting.ts';
import css from './on-machine.module.css';

export function OnMachine({ line }: { line: QueueLine }) {
  const stop = useAppCommand('floor/stop-operation');
  const finish = useAppCommand('floor/finish-operation');
  const operations = [{ operationId: line.operationId, seenVersion: line.version }];
  const error = stop.error ?? finish.error;
  return (
    <section className={css.on} aria-label={`On the machine: ${line.tag}`}>
      <a href={benchAddress(line.tag)} className={css.tag}>
        <span>On the machine {line.running.map((who) => who.initials).join(', ')}</span>
        <Tag number={line.tag} metal={line.metal.class} size="xl" />
      </a>
      <div className={css.words}>
        <b>{line.words}</b>
        <span>{line.second}</span>
        <span>{line.setUp}</span>
      </div>
      <Button working={stop.pending} onPress={() => void stop.send({ operations })}>
        Stop
      </Button>
      <GoButton working={finish.pending} onPress={() => void finish.send({ operations })}>
        Done
      </GoButton>
      <Button kind="found" href={foundAddress(line.tag)}>
        Found something
      </Button>
      {error && (
        <div className={css.error}>
          <ErrorNote error={error} acts={<Button href={benchAddress(line.tag)}>Open casting</Button>} />
          {(error.reply.offers ?? []).map((offer) => (
            <Notice key={offer.words}>{offer.words}</Notice>
          ))}
        </div>
      )}
    </section>
  );
}
