/** Pictures on paper: a photo of a finding, a signature drawn on the glass. */
import { inflateSync } from 'node:zlib';
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
        if (isPng(bytes)) inflateSync(packedOf(bytes));
        ink.doc.image(bytes, x, y, { fit: [width, height], ...stand });
      } catch {
        text(ink, 'The picture cannot be read.', STYLES.small, width).draw(x, y);
      }
    },
  };
}

const isPng = (bytes: Buffer): boolean => bytes.subarray(1, 4).toString('latin1') === 'PNG';

/**
 * The packed points of a PNG, all its IDAT chunks in a row (PNG specification, section 11.2.3). The library unpacks them
 * only when the paper is closed, where a damaged picture would take the whole paper with it; so it is tried before.
 */
function packedOf(png: Buffer): Buffer {
  const chunks: Buffer[] = [];
  for (let at = SIGNATURE; at + HEAD <= png.length; ) {
    const length = png.readUInt32BE(at);
    if (png.toString('latin1', at + 4, at + HEAD) === 'IDAT') chunks.push(png.subarray(at + HEAD, at + HEAD + length));
    at += HEAD + length + CHECKSUM;
  }
  return Buffer.concat(chunks);
}

const SIGNATURE = 8;
/** Length and name before a chunk's data. */
const HEAD = 8;
const CHECKSUM = 4;
