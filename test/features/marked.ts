/**
 * Marked plans as tests of what an editor shows. A mark stands on the line above the one it is about, several of them one
 * under the other, and marks are comments like any other:
 *
 *     //? hover at warm: glaze warm | fatness
 *     //? complete after medium 60 %: rich | !blue
 *
 * says: the feature, the words in the next line at which the cursor stands (`at`: in their midst, `after`: behind them),
 * and after the colon what is expected, between bars. What each feature makes of that is told in features.test.ts.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { readPlan } from '../../language/src/plan/read.ts';
import { nodeHost } from '../../language/src/server/node-files.ts';
import { study } from '../../language/src/study/build.ts';

export interface Mark {
  readonly feature: string;
  /** offsets of the words it is about */
  readonly start: number;
  readonly end: number;
  /** where the cursor stands */
  readonly cursor: number;
  readonly wanted: readonly string[];
  /** the mark as written */
  readonly text: string;
}

const MARK = /^\s*\/\/\? (\w+) (at|after) (.+?): (.+)$/;
const folder = new URL('.', import.meta.url);

export function marks(text: string): Mark[] {
  const made: Mark[] = [];
  let waiting: RegExpExecArray[] = [];
  let offset = 0;
  for (const line of text.split('\n')) {
    const mark = MARK.exec(line);
    if (mark) waiting.push(mark);
    else if (/^\s*\/\/\?/.test(line)) throw new Error(`no mark: ${line}`);
    else {
      for (const [whole, feature = '', side, words = '', wanted = ''] of waiting) {
        const at = line.indexOf(words);
        if (at < 0) throw new Error(`no ‘${words}’ below ${whole.trim()}`);
        const [start, end] = [offset + at, offset + at + words.length];
        const cursor = side === 'after' ? end : start + Math.floor(words.length / 2);
        made.push({ feature, start, end, cursor, wanted: wanted.split(' | '), text: whole.trim() });
      }
      waiting = [];
    }
    offset += line.length + 1;
  }
  if (waiting.length > 0) throw new Error('a mark stands above nothing');
  return made;
}

export interface Marked {
  readonly file: string;
  readonly uri: string;
  readonly text: string;
  readonly marks: readonly Mark[];
}

export const texts: readonly Marked[] = readdirSync(folder)
  .filter((f) => f.endsWith('.paintplan'))
  .map((file) => {
    const at = new URL(file, folder);
    const text = readFileSync(at, 'utf8');
    return { file, uri: pathToFileURL(at.pathname).href, text, marks: marks(text) };
  })
  .filter((t) => t.marks.length > 0);

export function analysed(text: string, uri: string) {
  const plan = readPlan(text, uri, nodeHost([folder.pathname]));
  return { plan, study: study(plan) };
}
