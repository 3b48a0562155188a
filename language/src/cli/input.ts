/** What the commands read: named files, walked directories, standard input. */
import { type Dirent, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { fencedPlans } from '../features/markdown.ts';
import { decoded } from '../plan/encoding.ts';
import { FILE_ENDING } from '../plan/names.ts';
import type { Input } from '../report/checked.ts';
import { fileUri } from '../server/node-files.ts';
import { refusal } from '../server/system.ts';
import { CannotRun, say } from './say.ts';
import { MOST_BYTES, standardInput } from './standard-input.ts';

export type { Input };

const cannotRead = (path: string, error: unknown): CannotRun =>
  new CannotRun(`${near(path)} cannot be read: ${refusal(error)}.`);

function bytesOf(path: string): Uint8Array {
  try {
    const stat = statSync(path);
    if (!stat.isFile()) throw new CannotRun(`${path} is not a regular file.`);
    if (stat.size > MOST_BYTES)
      throw new CannotRun(`${path} holds ${Math.round(stat.size / 1e6)} MB; a plan over 16 MB is not read.`);
    return readFileSync(path);
  } catch (error) {
    if (error instanceof CannotRun) throw error;
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') throw new CannotRun(`There is no file ${path}.`);
    throw cannotRead(path, error);
  }
}

function textOf(what: string, bytes: Uint8Array): string {
  const read = decoded(bytes);
  if ('not' in read) throw new CannotRun(`${what} ${read.not}. Save it as UTF-8 and try again.`);
  return read.text;
}

/** One file as it is, note or plan. Throws CannotRun. */
export const readFile = (path: string): Input => ({
  path: near(path),
  uri: fileUri(resolve(path)),
  text: textOf(near(path), bytesOf(path)),
});

function near(path: string): string {
  const way = relative(process.cwd(), resolve(path));
  return (way.startsWith('..') ? path : way).split(sep).join('/');
}

/** Plans below a folder, and the folders that could not be looked into. */
function* walk(folder: string): Generator<string | CannotRun> {
  let entries: Dirent[];
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    yield cannotRead(folder, error);
    return;
  }
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* walk(path);
    else if (entry.isFile() && entry.name.endsWith(FILE_ENDING)) yield path;
  }
}

/** Markdown notes are read for the plans fenced in them; each is an input in which nothing moved. */
export const isNote = (path: string): boolean => /\.(md|markdown)$/i.test(path);

const plansIn = (input: Input): Input[] =>
  isNote(input.path) ? fencedPlans(input.text).map(({ text }) => ({ ...input, text })) : [input];

/** Whether a path is a folder; what cannot be looked at is none. */
export function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function* orWhy(read: () => readonly Input[]): Generator<Input | CannotRun> {
  try {
    yield* read();
  } catch (error) {
    if (!(error instanceof CannotRun)) throw error;
    yield error;
  }
}

function* inputsOf(name: string, whole: boolean): Generator<Input | CannotRun> {
  if (name === '-') {
    const uri = fileUri(resolve(`standard-input${FILE_ENDING}`));
    yield* orWhy(() => [{ path: '<standard input>', uri, text: textOf('Standard input', standardInput()) }]);
  } else if (isFolder(name)) {
    let found = false;
    for (const path of walk(name)) {
      found = true;
      if (path instanceof CannotRun) yield path;
      else yield* orWhy(() => [readFile(path)]);
    }
    if (!found) yield new CannotRun(`There is no ${FILE_ENDING} file in ${name}.`);
  } else yield* orWhy(() => (whole ? [readFile(name)] : plansIn(readFile(name))));
}

/**
 * Reads every named file; a directory stands for all plans below it, `-` for standard input, a Markdown note for each
 * plan fenced in it. Throws CannotRun where a file cannot be read or a folder holds no plan.
 */
export function readInputs(names: readonly string[]): Input[] {
  return names.flatMap((name) =>
    [...inputsOf(name, false)].map((read) => {
      if (read instanceof CannotRun) throw read;
      return read;
    }),
  );
}

/** The same, but what cannot be read is said and left out; `whole` leaves notes as they are. */
export function readEach(
  names: readonly string[],
  { whole = false } = {},
): { readonly inputs: readonly Input[]; readonly all: boolean } {
  const inputs: Input[] = [];
  let all = true;
  for (const name of names)
    for (const read of inputsOf(name, whole))
      if (read instanceof CannotRun) {
        say(read.message);
        all = false;
      } else inputs.push(read);
  return { inputs, all };
}
