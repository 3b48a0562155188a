/** The examples and what the index says of each. The tutorial's files and the faulty plans are listed elsewhere. */
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { files } from '../cli/run.ts';

const FOLDER = 'examples';
const INDEX = join(FOLDER, 'README.md');

const shown = (path: string): boolean => !/[\\/](?:faulty|tutorial)[\\/]/.test(path) && path !== INDEX;

export const plans = files(FOLDER, '.paintplan').filter(shown);
export const notes = files(FOLDER, '.md').filter(shown);

export const text = (path: string): string => readFileSync(path, 'utf8');
export const index = (): string => text(INDEX);

/** Path and sentence of every row of the index's tables. */
export const rows = (): Map<string, string> =>
  new Map(
    [...index().matchAll(/^\| \[([^\]]+)\]\(([^)]+)\) \| (.+) \|$/gm)].map((m) => [
      m[1] === m[2] ? (m[2] as string) : '',
      m[3] as string,
    ]),
  );

export const inFolder = (path: string): string => relative(FOLDER, path).replaceAll('\\', '/');

/** A text without comments and quoted words: what of it is language. */
export const bare = (path: string): string =>
  text(path).replace(/"[^"\n]*"|\/\/[^\n]*|\/\*[\s\S]*?\*\//g, ' ');
