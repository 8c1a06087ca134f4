/** Two people read one place: both stand side by side, equal in size; a third way is to measure again. */
import type { ReadingShown } from '#core/readings/compute/sheet-model.ts';
import { useAppCommand } from '../../../client/use-app.ts';
import { useFormat } from '../../../client/use-shop.ts';
import { Button } from '../../../kit/button.tsx';
import { ErrorNote, Notice } from '../../../kit/notice.tsx';

export function TwoReadings({ label, readings }: { label: string; readings: readonly ReadingShown[] }) {
  const choose = useAppCommand('readings/choose-reading');
  const format = useFormat();
  return (
    <Notice
      kind="ask"
      acts={readings.map((reading) => (
        <Button
          key={reading.id}
          working={choose.pending}
          onPress={() => void choose.send({ reading: reading.id, reason: 'two readings, this one stands' })}
        >
          {reading.text} {reading.by} {format.clock(reading.at)}
        </Button>
      ))}
    >
      Two people read {label}. Choose which one stands; the other stays, struck through. Or measure again.
      <ErrorNote error={choose.error} />
    </Notice>
  );
}
