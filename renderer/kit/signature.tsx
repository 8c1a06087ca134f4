/** A field to sign in with pen, finger or mouse; `Signed on paper` stands beside it in the form. */
import { type PointerEvent, useRef, useState } from 'react';
import { Button } from './button.tsx';
import css from './signature.module.css';

const WIDTH = 600;
const HEIGHT = 150;

/** Calls `onSigned` with a PNG after each stroke, and with null when it is wiped. */
export function Signature({ label, onSigned }: { label: string; onSigned: (png: Blob | null) => void }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const drawing = useRef(false);
  const [signed, setSigned] = useState(false);

  const pen = () => canvas.current?.getContext('2d') ?? null;
  const at = (event: PointerEvent<HTMLCanvasElement>): [number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    return [((event.clientX - box.left) / box.width) * WIDTH, ((event.clientY - box.top) / box.height) * HEIGHT];
  };
  const start = (event: PointerEvent<HTMLCanvasElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    drawing.current = true;
    const context = pen();
    if (!context) return;
    // Paper is white and ink is black in either light.
    if (!signed) {
      context.fillStyle = '#fff';
      context.fillRect(0, 0, WIDTH, HEIGHT);
    }
    context.lineWidth = 3;
    context.lineCap = 'round';
    context.lineJoin = 'round';
    context.strokeStyle = '#000';
    context.beginPath();
    context.moveTo(...at(event));
  };
  const move = (event: PointerEvent<HTMLCanvasElement>) => {
    if (!drawing.current) return;
    const context = pen();
    context?.lineTo(...at(event));
    context?.stroke();
  };
  const end = () => {
    if (!drawing.current) return;
    drawing.current = false;
    setSigned(true);
    canvas.current?.toBlob(onSigned, 'image/png');
  };
  const wipe = () => {
    pen()?.clearRect(0, 0, WIDTH, HEIGHT);
    setSigned(false);
    onSigned(null);
  };
  return (
    <div className={css.signature}>
      <canvas
        ref={canvas}
        width={WIDTH}
        height={HEIGHT}
        className={css.field}
        role="img"
        aria-label={signed ? `${label}, signed` : label}
        onPointerDown={start}
        onPointerMove={move}
        onPointerUp={end}
        onPointerCancel={end}
      />
      {signed && <Button onPress={wipe}>Sign again</Button>}
    </div>
  );
}
