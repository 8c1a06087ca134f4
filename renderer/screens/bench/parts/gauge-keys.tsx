/** The gauges that fit, one of them in the hand; an overdue one says so and is offered all the same. */
import type { Sheet } from '#core/readings/compute/sheet-model.ts';
import { Button } from '../../../kit/button.tsx';
import type { Gauge } from '../hooks/use-preview.ts';
import css from './gauge-panel.module.css';

export function GaugeKeys({
  tools,
  gauge,
  onGauge,
}: {
  /** The likeliest first. */
  tools: Sheet['tools'];
  gauge: Gauge;
  onGauge: (gauge: Gauge) => void;
}) {
  return (
    <div>
      <h3>Gauge in the hand</h3>
      <div className={css.buttons}>
        {tools.map((tool) => (
          <Button key={tool.id} pressed={tool.id === gauge.tool} onPress={() => onGauge({ ...gauge, tool: tool.id })}>
            <span>
              {tool.name}
              <small className={css.kind}>
                {tool.kind}
                {tool.overdue && ', check overdue'}
              </small>
            </span>
          </Button>
        ))}
        <Button pressed={gauge.tool === null} onPress={() => onGauge({ ...gauge, tool: null })}>
          not named
        </Button>
      </div>
    </div>
  );
}
