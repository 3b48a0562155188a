/** Runs the command line in this process, with what it would have written. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { main } from '../../language/src/cli/main.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export async function run(...args: string[]): Promise<Ran> {
  let out = '';
  let err = '';
  const [write, writeError, error] = [process.stdout.write, process.stderr.write, console.error];
  process.stdout.write = ((text: string) => {
    out += text;
    return true;
  }) as typeof process.stdout.write;
  process.stderr.write = ((text: string) => {
    err += text;
    return true;
  }) as typeof process.stderr.write;
  console.error = (...words: unknown[]) => {
    err += `${words.join(' ')}\n`;
  };
  try {
    return { code: await main(args), out, err };
  } finally {
    process.stdout.write = write;
    process.stderr.write = writeError;
    console.error = error;
  }
}

export const files = (folder: string, ending: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith(ending))
    .map((f) => join(folder, f))
    .sort();
