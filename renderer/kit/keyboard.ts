/** The keyboard map: which keys do what, everywhere. Every act also has a button. */
import { createContext, useContext, useEffect, useRef } from 'react';

export type Act =
  | 'find'
  | 'check-in'
  | 'another-casting'
  | 'quote'
  | 'area-1'
  | 'area-2'
  | 'area-3'
  | 'area-4'
  | 'area-5'
  | 'print'
  | 'undo'
  | 'redo'
  | 'kept'
  | 'go'
  | 'back'
  | 'keys'
  | 'leave';

type Chord = Readonly<{ key: string; ctrl?: true; alt?: true; shift?: true }>;
type Line = Readonly<{
  act: Act;
  words: string;
  keys: Chord;
  /** The same in a browser tab, which keeps the first chord for itself. */
  inTab?: Chord;
}>;

const area = (n: 1 | 2 | 3 | 4 | 5, words: string): Line => ({
  act: `area-${n}`,
  words,
  keys: { key: String(n), ctrl: true },
  inTab: { key: String(n), alt: true },
});

/** In the order they are listed by F1. */
export const KEYBOARD: readonly Line[] = [
  { act: 'find', words: 'find box', keys: { key: 'f', ctrl: true } },
  { act: 'check-in', words: 'check in castings', keys: { key: 'n', ctrl: true }, inTab: { key: 'n', alt: true } },
  {
    act: 'another-casting',
    words: 'another casting on this ticket',
    keys: { key: 'n', ctrl: true, shift: true },
    inTab: { key: 'n', alt: true, shift: true },
  },
  { act: 'quote', words: 'quote on the phone', keys: { key: 'e', ctrl: true } },
  area(1, 'Counter'),
  area(2, 'Bench'),
  area(3, 'Racks'),
  area(4, 'Books'),
  area(5, 'Shop'),
  { act: 'print', words: 'print what this page prints', keys: { key: 'p', ctrl: true } },
  { act: 'go', words: 'the go button of this page', keys: { key: 'Enter', ctrl: true } },
  { act: 'undo', words: 'undo', keys: { key: 'z', ctrl: true } },
  { act: 'redo', words: 'redo', keys: { key: 'y', ctrl: true } },
  { act: 'kept', words: 'when it was kept', keys: { key: 's', ctrl: true } },
  { act: 'back', words: 'back', keys: { key: 'ArrowLeft', alt: true } },
  { act: 'leave', words: 'close find, leave a page; nothing is lost', keys: { key: 'Escape' } },
  { act: 'keys', words: 'keys of this page', keys: { key: 'F1' } },
];

type Pressed = Readonly<{
  key: string;
  code?: string;
  ctrlKey: boolean;
  altKey: boolean;
  shiftKey: boolean;
  metaKey: boolean;
}>;

/** What a key press means, or null. Alt with a letter is read by the key's place, since some keyboards change the letter. */
export function actOf(pressed: Pressed): Act | null {
  const line = KEYBOARD.find(
    ({ keys, inTab }) => meets(keys, pressed) || (inTab !== undefined && meets(inTab, pressed)),
  );
  return line?.act ?? null;
}

function meets(chord: Chord, pressed: Pressed): boolean {
  const ctrl = pressed.ctrlKey || pressed.metaKey;
  if (ctrl !== (chord.ctrl ?? false) || pressed.altKey !== (chord.alt ?? false)) return false;
  if (pressed.shiftKey !== (chord.shift ?? false)) return false;
  return pressed.key.toLowerCase() === chord.key.toLowerCase() || codeOf(chord.key) === pressed.code;
}

const codeOf = (key: string): string | null => {
  if (/^\d$/.test(key)) return `Digit${key}`;
  return /^[a-z]$/.test(key) ? `Key${key.toUpperCase()}` : null;
};

const SHOWN: Readonly<Record<string, string>> = { ArrowLeft: 'Left', Escape: 'Esc' };

/** The keys of an act as shown: the ones that work on this screen. */
export function keysOf(act: Act, inTab = !('benchtag' in window)): string {
  const line = KEYBOARD.find((candidate) => candidate.act === act);
  if (!line) return '';
  const chord = inTab ? (line.inTab ?? line.keys) : line.keys;
  const key = SHOWN[chord.key] ?? (chord.key.length === 1 ? chord.key.toUpperCase() : chord.key);
  return [chord.ctrl && 'Ctrl', chord.alt && 'Alt', chord.shift && 'Shift', key].filter(Boolean).join(' ');
}

/** Acts a page answers; the newest answers first. */
export type Acts = Readonly<{ add(act: Act, run: () => void): () => void }>;
export const ActsContext = createContext<Acts>({ add: () => () => undefined });

/** Answer an act while this part is shown. `run` undefined: leave it to the page around. */
export function useAct(act: Act, run: (() => void) | undefined): void {
  const acts = useContext(ActsContext);
  const latest = useRef(run);
  latest.current = run;
  const answered = run !== undefined;
  useEffect(() => (answered ? acts.add(act, () => latest.current?.()) : undefined), [acts, act, answered]);
}

/** Listens on a window and runs the newest answer of each act; a press nobody answers is left to the browser. */
export function listenForActs(target: Window): Acts & Readonly<{ end(): void }> {
  const answers: { act: Act; run: () => void }[] = [];
  const onKey = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.isComposing) return;
    const act = actOf(event);
    const answer = act && answers.findLast((candidate) => candidate.act === act);
    if (!answer) return;
    event.preventDefault();
    answer.run();
  };
  target.addEventListener('keydown', onKey);
  return {
    add(act, run) {
      const answer = { act, run };
      answers.push(answer);
      return () => {
        answers.splice(answers.indexOf(answer), 1);
      };
    },
    end: () => target.removeEventListener('keydown', onKey),
  };
}
