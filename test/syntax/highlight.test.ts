/** Highlighting: marked texts, and the words of the grammar held to the list of words. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { HIGHLIGHTING, highlighted } from '../../language/build/highlighting.ts';
import {
  declarationWords,
  fieldsOf,
  joiningWords,
  LAYER_WORDS,
  WORDED,
} from '../../language/src/syntax/words.ts';

const root = new URL('../..', import.meta.url).pathname;
const folder = join(root, 'test', 'syntax', 'highlight');
const tool = join(root, 'node_modules', 'vscode-tmgrammar-test', 'dist', 'unit.js');
const run = (path: string) =>
  spawnSync(process.execPath, [tool, '--config', join(folder, 'config.json'), path], { encoding: 'utf8' });

test.each(readdirSync(folder).filter((f) => !f.endsWith('.json')))('%s', (file) => {
  const { status, stdout } = run(join(folder, file));
  expect(status, stdout).toBe(0);
});

test('a wrong mark is noticed', () => {
  const own = mkdtempSync(join(tmpdir(), 'paintplan-highlight-'));
  writeFileSync(
    join(own, 'wrong.paintplan'),
    '// SYNTAX TEST "source.paintplan"\nglaze warm { film thin }\n// <----- string.quoted.double.paintplan\n',
  );
  expect(run(join(own, 'wrong.paintplan')).status).not.toBe(0);
  rmSync(own, { recursive: true });
});

test('the words of fields are current: else run node language/build/highlighting.ts', () => {
  const grammar = readFileSync(HIGHLIGHTING, 'utf8');
  expect(grammar).toBe(highlighted(grammar));
});

test('every word of the language is known to the highlighting', () => {
  const grammar = readFileSync(join(root, 'extension', 'syntaxes', 'paintplan.tmLanguage.json'), 'utf8');
  const words = new Set(grammar.match(/[a-z]+(?:-[a-z]+)*/g));
  const all = [...declarationWords, ...WORDED.flatMap(fieldsOf)].map((w) => w.word);
  expect([...all, ...joiningWords, ...LAYER_WORDS].filter((w) => !words.has(w))).toEqual([]);
});
