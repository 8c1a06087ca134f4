/** The finished size, large and in both units, how it is reached, and the command that writes it down for every cylinder. */
import { useState } from 'react';
import type { OversizeCandidate, OversizeChoice, OversizeRule } from '#core/readings/compute/oversize-model.ts';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { Button, GoButton } from '../../../kit/button.tsx';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';
import { type askedOf, wayThere, whyShut } from '../oversize-view.ts';
import css from './oversize-use.module.css';

export function OversizeUse({
  sheet,
  choice,
  candidate,
  rule,
  asked,
  operation,
}: {
  sheet: Sheet;
  choice: OversizeChoice;
  candidate: OversizeCandidate | null;
  rule: OversizeRule | null;
  asked: ReturnType<typeof askedOf>;
  operation: number | null;
}) {
  const use = useAppCommand('readings/use-oversize');
  const [asking, setAsking] = useState(false);
  const shut = whyShut(choice, candidate, rule);
  const send = (sure: boolean) => {
    if (!candidate || rule === null) return;
    if (candidate.ask !== null && !sure) {
      setAsking(true);
      return;
    }
    setAsking(false);
    void use.send({ casting: sheet.casting.id, ...asked, operation, oversize: candidate.code, rule, sure });
  };
  return (
    <section className={css.use} aria-label="Finished size">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, also by keyboard. */}
      <div className={css.words} tabIndex={0} role="group" aria-label="The size and what must be known">
        <p>Finish bore, {choice.which}</p>
        {candidate?.finished ? (
          <p className={css.size}>
            {candidate.finished.text} <small>{choice.unit}</small>
          </p>
        ) : (
          <p className={css.other}>No size yet.</p>
        )}
        {candidate?.finished && (
          <p className={css.other}>{[candidate.finished.other, candidate.words].filter(Boolean).join(', ')}</p>
        )}
        {candidate && <p>{wayThere(choice, candidate)}</p>}
        {candidate && rule !== null && candidate[rule].wallLeft && (
          <p>Thinnest wall left {candidate[rule].wallLeft.text}.</p>
        )}
        {choice.unread.length > 0 && <p>Not read: {choice.unread.map((one) => one.words).join('; ')}.</p>}
        {choice.chosen.map((one) => (
          <p key={`${one.where} ${one.finished.text}`} className={css.stands}>
            Wanted now: <b>{one.finished.text}</b>, {one.where}. {one.note || one.words}
          </p>
        ))}
        {choice.warnings.map((sentence) => (
          <p key={sentence} className={css.warning}>
            {sentence}
          </p>
        ))}
      </div>
      {asking && candidate?.ask && (
        <Notice
          kind="ask"
          acts={
            <>
              <Button onPress={() => send(true)}>Yes, use it</Button>
              <Button onPress={() => setAsking(false)}>No</Button>
            </>
          }
        >
          {candidate.ask}
        </Notice>
      )}
      <ErrorNote error={use.error} />
      <div className={css.go}>
        <GoButton wide working={use.pending} shut={shut} onPress={() => send(false)}>
          Use {candidate ? (candidate.code === 'std' ? candidate.words : `${candidate.over} over`) : 'this size'}
        </GoButton>
      </div>
    </section>
  );
}
