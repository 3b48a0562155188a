/** The test files, and what may be told of them by their text. */
import { readdirSync, readFileSync } from 'node:fs';

const folder = new URL('.', import.meta.url);

/** Test files whose text is as asked, as vitest names them. */
export const testFiles = (asked: (text: string, path: string) => boolean): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.test.ts') && asked(readFileSync(new URL(path, folder), 'utf8'), path))
    .map((path) => `test/${path}`);
