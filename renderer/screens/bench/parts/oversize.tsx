/** Boring all cylinders to one size: every size on the list by both rules, the finished size large, and the way to use it. */
import { useState } from 'react';
import type { OversizeRule } from '#core/readings/compute/oversize-model.ts';
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { useAppQuery } from '../../../client/use-app.ts';
import { Button } from '../../../kit/button.tsx';
import { ErrorNote } from '../../../kit/notice.tsx';
import { Waiting } from '../../../kit/pane.tsx';
import { askedOf, type Part, sizeToBegin } from '../oversize-view.ts';
import css from './oversize.module.css';
import { OversizeFigures } from './oversize-figures.tsx';
import { OversizeList } from './oversize-list.tsx';
import { OversizeParts } from './oversize-parts.tsx';
import { OversizeUse } from './oversize-use.tsx';

export function Oversize({
  sheet,
  operation,
  onClose,
}: {
  sheet: Sheet;
  operation: number | null;
  onClose: () => void;
}) {
  const [parts, setParts] = useState<ReadonlyMap<number, Part>>(new Map());
  const [chosen, setChosen] = useState<string | null>(null);
  const [rule, setRule] = useState<OversizeRule | null>(null);
  const [side, setSide] = useState<'sizes' | 'cylinders' | 'figures'>('sizes');
  const turn = (to: typeof side) => setSide(side === to ? 'sizes' : to);
  const asked = askedOf(sheet, parts);
  const { data: choice, error } = useAppQuery(
    'readings/get-oversize-choice',
    { casting: sheet.casting.id, ...asked },
    { ticket: sheet.casting.ticket, keep: true },
  );
  if (error) return <ErrorNote error={error} acts={<Button onPress={onClose}>Back to readings</Button>} />;
  if (!choice) return <Waiting />;
  const begin = sizeToBegin(choice, rule);
  const candidate = choice.candidates.find((one) => one.code === (chosen ?? begin.code)) ?? null;
  return (
    <div className={css.oversize}>
      <section className={css.sheet} aria-label="Oversize">
        <div className={css.head}>
          <h2>Oversize: bore {choice.which} to one size</h2>
          <Button pressed={side === 'figures'} onPress={() => turn('figures')}>
            Figures
          </Button>
          <Button pressed={side === 'cylinders'} onPress={() => turn('cylinders')}>
            Cylinders
          </Button>
          <Button onPress={onClose}>Back to readings</Button>
        </div>
        {side === 'cylinders' && (
          <OversizeParts
            sheet={sheet}
            parts={parts}
            onPart={(spot, part) => setParts((before) => new Map(before).set(spot, part))}
          />
        )}
        {side === 'figures' && <OversizeFigures sheet={sheet} choice={choice} />}
        {side === 'sizes' && (
          <OversizeList
            choice={choice}
            chosen={candidate?.code ?? null}
            onChoose={setChosen}
            rule={begin.rule}
            onRule={(next) => {
              setRule(next);
              setChosen(null);
            }}
          />
        )}
      </section>
      <OversizeUse
        key={`${candidate?.code}|${begin.rule}|${choice.which}`}
        sheet={sheet}
        choice={choice}
        candidate={candidate}
        rule={begin.rule}
        asked={asked}
        operation={operation}
      />
    </div>
  );
}
