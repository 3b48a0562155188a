/**
 * Marked plans as tests of rules. A rule has a folder of its own, `test/rules/<id>/`: `speaks-*.paintplan`, in which every
 * finding of the rule is marked, `silent-*.paintplan`, in which it has nothing to say, and whatever these `use`. A mark
 * stands on the line above the one it is about, several of them one under the other:
 *
 *     //! warning 1 fix at last-light: 20 % | may crack
 *
 * says: severity, how many fixes (left out: any number), the words the finding begins at (their first occurrence in the
 * next line; `start` for the beginning of the file), and after the colon the pieces of text its message has, between
 * bars. Marks are comments like any other.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Fix, Severity } from '../../language/src/plan/plan.ts';
import { readPlan } from '../../language/src/plan/read.ts';
import { findings } from '../../language/src/rules/check.ts';
import type { Finding } from '../../language/src/rules/rule.ts';
import { nodeHost } from '../../language/src/server/node-files.ts';
import { study } from '../../language/src/study/build.ts';

export const folder = new URL('.', import.meta.url).pathname;

export interface Mark {
  readonly severity: Severity;
  readonly fixes?: number;
  readonly start: number;
  readonly texts: readonly string[];
  /** the line of the mark, from 1 */
  readonly line: number;
}

const MARK = /^\s*\/\/! (error|warning|info|hint)(?: (\d+) fix(?:es)?)? at (.+?): (.*)$/;

export function marks(text: string): Mark[] {
  const found: Mark[] = [];
  let waiting: RegExpExecArray[] = [];
  let offset = 0;
  for (const [index, line] of text.split('\n').entries()) {
    const mark = MARK.exec(line);
    if (mark) waiting.push(mark);
    else {
      for (const [i, m] of waiting.entries()) {
        const token = m[3] as string;
        const at = line.indexOf(token);
        const number = index - waiting.length + i + 1;
        if (at < 0 && token !== 'start') throw new Error(`line ${number}: no ‘${token}’ in the line below`);
        found.push({
          severity: m[1] as Severity,
          ...(m[2] === undefined ? {} : { fixes: Number(m[2]) }),
          start: token === 'start' ? 0 : offset + at,
          texts: (m[4] as string).split(' | ').map((t) => t.trim()),
          line: number,
        });
      }
      waiting = [];
      if (/^\s*\/\/!/.test(line)) throw new Error(`line ${index + 1} is no mark: ${line}`);
    }
    offset += line.length + 1;
  }
  if (waiting.length > 0) throw new Error('a mark stands above nothing');
  return found;
}

export interface Example {
  readonly rule: string;
  readonly file: string;
  readonly uri: string;
  readonly text: string;
}

export function examplesOf(rule: string, kind: 'speaks' | 'silent'): Example[] {
  const of = join(folder, rule);
  if (!existsSync(of)) return [];
  return readdirSync(of)
    .filter((f) => f.startsWith(`${kind}-`) && f.endsWith('.paintplan'))
    .sort()
    .map((file) => ({
      rule,
      file,
      uri: pathToFileURL(join(of, file)).href,
      text: readFileSync(join(of, file), 'utf8'),
    }));
}

/** All findings of a text; a rule that throws is thrown. */
export function judged(text: string, { uri, rule }: Pick<Example, 'uri' | 'rule'>): Finding[] {
  const plan = readPlan(text, uri, nodeHost([join(folder, rule)]));
  return findings(plan, study(plan), { strict: true });
}

/** The text after a fix; edits that overlap or lie in another file are an error. */
export function applied(text: string, fix: Fix, uri: string): string {
  let out = text;
  let before = Number.POSITIVE_INFINITY;
  for (const { place, text: put } of [...fix.edits].sort(
    (a, b) => b.place.start - a.place.start || b.place.end - a.place.end,
  )) {
    if (place.uri !== uri) throw new Error(`‘${fix.title}’ edits another file`);
    if (place.end > before || place.start > place.end)
      throw new Error(`‘${fix.title}’ has edits that overlap`);
    before = place.start;
    out = out.slice(0, place.start) + put + out.slice(place.end);
  }
  return out;
}

/** Comments of a text, in order. */
export const comments = (text: string): string[] => text.match(/\/\/[^\n\r]*|\/\*[\s\S]*?\*\//g) ?? [];

/**
 * How often each rule speaks at each severity. Hints are left out, since an unused name may be what a fix leaves; so are
 * remarks where an error is mended, since what could not be computed before is judged now.
 */
export function counts(found: readonly Finding[], mended: Severity): Map<string, number> {
  const counted = new Map<string, number>();
  for (const f of found) {
    if (f.severity === 'hint' || (f.severity === 'info' && mended === 'error')) continue;
    const key = `${f.rule} (${f.severity})`;
    counted.set(key, (counted.get(key) ?? 0) + 1);
  }
  return counted;
}
