/** What a request is: its name, who may send it, what goes in and what comes out. Shared by screens and host. */
import type { z } from 'zod';
import type { Capability } from './roles.ts';

type Shape = Readonly<{
  /** What the sender must be allowed; `nobody` needs no signed-in person, only a paired device. */
  may: Capability | 'nobody';
  input: z.ZodType;
  output: z.ZodType;
  /** `again`: the person's PIN is asked again unless it was typed on this device in the last two minutes. */
  pin?: 'again';
  /** Input keys that are never written to activity (PINs). */
  secret?: readonly string[];
}>;

export type QueryEntry = Shape & Readonly<{ kind: 'query' }>;
export type CommandEntry = Shape & Readonly<{ kind: 'command' }>;
export type Entry = QueryEntry | CommandEntry;
export type Contract = Readonly<Record<string, Entry>>;

/** Declare a query: reads only. */
export const query = <const S extends Shape>(shape: S): S & { readonly kind: 'query' } => ({ ...shape, kind: 'query' });
/** Declare a command: changes the workspace, leaves activity. */
export const command = <const S extends Shape>(shape: S): S & { readonly kind: 'command' } => ({
  ...shape,
  kind: 'command',
});

/** What a sender writes (before defaults and transforms). */
export type InputOf<E extends Entry> = z.input<E['input']>;
/** What a handler receives. */
export type ParsedInputOf<E extends Entry> = z.output<E['input']>;
/** What comes back. */
export type OutputOf<E extends Entry> = z.output<E['output']>;
