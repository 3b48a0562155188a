/** What the commands read: named files, walked directories, standard input. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { fencedPlans } from '../features/markdown.ts';
import { FILE_ENDING } from '../plan/names.ts';
import type { Input } from '../report/checked.ts';
import { fileUri } from '../server/node-files.ts';

export type { Input };

/** A usage fault or an unreadable file: the command stops with exit code 2. */
export class CannotRun extends Error {}

const MOST_BYTES = 16 * 1024 * 1024;

function readOne(path: string): Input {
  let text: string;
  try {
    const stat = statSync(path);
    if (!stat.isFile()) throw new CannotRun(`${path} is not a regular file.`);
    if (stat.size > MOST_BYTES)
      throw new CannotRun(`${path} holds ${Math.round(stat.size / 1e6)} MB; a plan over 16 MB is not read.`);
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if (error instanceof CannotRun) throw error;
    const code = (error as NodeJS.ErrnoException).code;
    throw new CannotRun(
      code === 'ENOENT' ? `There is no file ${path}.` : `${path} cannot be read (${code ?? error}).`,
    );
  }
  return { path: shown(path), uri: fileUri(resolve(path)), text };
}

function shown(path: string): string {
  const near = relative(process.cwd(), resolve(path));
  return (near.startsWith('..') ? path : near).split(sep).join('/');
}

function* walk(folder: string): Generator<string> {
  for (const entry of readdirSync(folder, { withFileTypes: true }).sort((a, b) =>
    a.name < b.name ? -1 : 1,
  )) {
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

/** One file as it is, note or plan. Throws CannotRun. */
export const readFile = readOne;

/**
 * Reads every named file; a directory stands for all plans below it, `-` for standard input, a Markdown note for each
 * plan fenced in it. Throws CannotRun where a file cannot be read or a folder holds no plan.
 */
export function readInputs(names: readonly string[]): Input[] {
  return names.flatMap((name) => {
    if (name === '-') {
      const uri = fileUri(resolve(`standard-input${FILE_ENDING}`));
      return [{ path: '<standard input>', uri, text: readFileSync(0, 'utf8') }];
    }
    let folder = false;
    try {
      folder = statSync(name).isDirectory();
    } catch {
      // readOne says what is wrong
    }
    if (!folder) return plansIn(readOne(name));
    const inputs = [...walk(name)].map(readOne);
    if (inputs.length === 0) throw new CannotRun(`There is no ${FILE_ENDING} file in ${name}.`);
    return inputs;
  });
}
