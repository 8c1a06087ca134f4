/** Slow things a command may need before its transaction: files, drawing, secrets, backups. Given by the wiring. */

/** A file kept by its SHA-256 under `attachments/<first 2>/<sha256>`. */
export type StoredFile = Readonly<{
  sha256: string;
  bytes: number;
  mime: string;
  width: number | null;
  height: number | null;
}>;

export type Services = Readonly<{
  files: Readonly<{
    /** Keep bytes; the same bytes twice are one file. @throws AppError `invalid-input` for a type we do not keep. */
    put(bytes: Uint8Array, mime: string): Promise<StoredFile>;
    /** What is known of a kept file, or undefined. */
    find(sha256: string): StoredFile | undefined;
    read(sha256: string): Promise<Uint8Array>;
  }>;
  /** Salted slow hash of a PIN, and its check (scrypt). */
  pins: Readonly<{ hash(pin: string): Promise<string>; matches(pin: string, hash: string): Promise<boolean> }>;
  /** Draw a paper off the main thread. `sheet` names a paper of core/sheets/contract/papers, `data` its plain JSON input. */
  draw(sheet: string, data: unknown): Promise<Uint8Array>;
  /** Copy the workspace, check the copy, keep it under backups/. */
  backup(why: string): Promise<Readonly<{ file: string; bytes: number; seconds: number }>>;
  backups: Readonly<{
    /** Newest first. */
    list(): readonly Readonly<{ file: string; at: string; bytes: number; why: string }>[];
    /** @throws AppError when that backup is not there, not whole, or of a newer program. */
    check(file: string): void;
  }>;
}>;
