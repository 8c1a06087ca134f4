/** Runs a few lines of Python, whose standard library reads what this program writes. */
import { execFileSync } from 'node:child_process';

/**
 * What a script prints, read as JSON.
 *
 * @param script its text; `sys`, `io`, `csv`, `json`, `fractions` are imported, `text` is what was given, as it is
 * @throws Error with the script's own words when it fails
 */
export function askPython<T>(script: string, text: string): T {
  const head = [
    'import sys, io, csv, json, fractions',
    'text = sys.stdin.buffer.read().decode("utf-8")',
    'sys.stdout.reconfigure(encoding="utf-8")',
  ];
  const printed = execFileSync('python3', ['-c', [...head, script].join('\n')], {
    input: text,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  return JSON.parse(printed) as T;
}
