/** Pictures on paper: a photo of a finding, a signature drawn on the glass. */
import { type Block, text } from './block.ts';
import { type Ink, STYLES } from './styles.ts';

/** Where a picture stands in its place. */
type Stand = Readonly<{ align?: 'center' | 'right'; valign?: 'center' | 'bottom' }>;

/**
 * A picture fitted into a place.
 *
 * @param base64 JPEG or PNG. One that cannot be read says so in its place; the paper is still drawn.
 */
export function picture(ink: Ink, base64: string, width: number, height: number, stand: Stand = {}): Block {
  const bytes = Buffer.from(base64, 'base64');
  return {
    width,
    height,
    draw(x, y) {
      try {
        ink.doc.image(bytes, x, y, { fit: [width, height], ...stand });
      } catch {
        text(ink, 'The picture cannot be read.', STYLES.small, width).draw(x, y);
      }
    },
  };
}
