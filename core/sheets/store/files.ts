/** Pictures a paper carries: named by their hash while it is gathered, filled in before it is drawn. */
import type { ReadDb } from '../../db/query.ts';
import type { Id } from '../../kernel/ids.ts';

const MARK = /^sha256:([0-9a-f]{64})$/;

/** Stands in the place of a picture until it is drawn. */
export const fileMark = (sha256: string): string => `sha256:${sha256}`;

/** The mark of a kept file, when a PDF can carry it. */
export function pictureMark(db: ReadDb, id: Id<'attachment'>): string | undefined {
  const file = db.one(db.q.selectFrom('attachment').select(['sha256', 'mime']).where('id', '=', id));
  return file && canCarry(file.mime) ? fileMark(file.sha256) : undefined;
}

/** A PDF carries these two as they are. */
export const canCarry = (mime: string): boolean => mime === 'image/jpeg' || mime === 'image/png';

/** The hash a mark names, or undefined for anything else. */
const markedFile = (text: unknown): string | undefined => (typeof text === 'string' ? MARK.exec(text)?.[1] : undefined);

/** The data with every marked picture in base 64. A picture that is gone leaves its place empty. */
export async function fillFiles<T>(data: T, read: (sha256: string) => Promise<Uint8Array>): Promise<T> {
  return (await filled(data, read)) as T;
}

async function filled(value: unknown, read: (sha256: string) => Promise<Uint8Array>): Promise<unknown> {
  const sha256 = markedFile(value);
  if (sha256 !== undefined) return Buffer.from(await read(sha256)).toString('base64');
  if (Array.isArray(value)) return Promise.all(value.map((item) => filled(item, read)));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(async ([key, item]) => [key, await filled(item, read)] as const);
  return Object.fromEntries(await Promise.all(entries));
}
