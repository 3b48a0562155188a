/** Runs the command line: in this process, or as a program of its own where pipes, devices and rights matter. */
import { type SpawnSyncOptionsWithStringEncoding, spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
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

/** As it is built. */
const PROGRAM = fileURLToPath(new URL('../../language/bin/paintplan.js', import.meta.url));

type Options = Partial<SpawnSyncOptionsWithStringEncoding>;

function ran(command: string, args: readonly string[], options: Options): Ran {
  const { status, stdout, stderr } = spawnSync(command, args, {
    encoding: 'utf8',
    timeout: 60_000,
    maxBuffer: 64 * 1024 * 1024,
    ...options,
  });
  return { code: status ?? -1, out: stdout ?? '', err: stderr ?? '' };
}

export const spawned = (args: readonly string[], options: Options = {}): Ran =>
  ran(process.execPath, [PROGRAM, ...args], options);

/** A script in which `paintplan` is the program. */
export const shell = (script: string, options: Options = {}): Ran =>
  ran('bash', ['-c', `paintplan() { "${process.execPath}" "${PROGRAM}" "$@"; }\n${script}`], options);

export const files = (folder: string, ending: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith(ending))
    .map((f) => join(folder, f))
    .sort();
