/** A file named in a command: sent before and known by its hash, or sent along as base64. Hashed by the host. */
import { AppError } from '../kernel/errors.ts';
import type { Services, StoredFile } from './services.ts';

type FileInput = Readonly<{ sha256: string }> | Readonly<{ base64: string; mime: string }>;

/** Pictures a screen and a paper can show. */
const PICTURES = ['image/jpeg', 'image/png', 'image/webp'];

/** @throws AppError `invalid-input` when the file never arrived, or is of a kind that is not kept. */
export async function keptFile(input: FileInput, services: Services, field = 'file'): Promise<StoredFile> {
  if ('base64' in input) return services.files.put(Buffer.from(input.base64, 'base64'), input.mime);
  const found = services.files.find(input.sha256);
  if (found) return found;
  const message = 'The file did not arrive. Send it again; nothing else was lost.';
  throw new AppError('invalid-input', 'photos/file-missing', message, { fields: { [field]: message } });
}

/** The same, for a picture. @throws AppError `invalid-input` `photos/no-picture` when it is none. */
export async function keptPicture(input: FileInput, services: Services, field = 'file'): Promise<StoredFile> {
  const file = await keptFile(input, services, field);
  if (PICTURES.includes(file.mime)) return file;
  const message = 'This file is no picture. Choose a JPEG, PNG or WebP; nothing else was lost.';
  throw new AppError('invalid-input', 'photos/no-picture', message, { fields: { [field]: message } });
}
