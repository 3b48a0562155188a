/** What the editor does for its reader: takes a fix, shows a hover. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { hover } from '../../language/src/features/hover.ts';
import { createAnalyser } from '../../language/src/index.ts';
import { nodeHost } from '../../language/src/server/node-files.ts';

const analysed = (text: string, file: string) =>
  createAnalyser()(text, pathToFileURL(resolve(file)).href, nodeHost([process.cwd()]));

/** The text after the nth fix, from 1, of the first finding of a rule that offers one. */
export function applied(text: string, file: string, rule: string, nth: number): string {
  const fix = analysed(text, file)
    .findings()
    .find((f) => f.rule === rule && f.fixes.length > 0)?.fixes[nth - 1];
  if (!fix) throw new Error(`${file} has no finding of ${rule} that can be mended.`);
  return [...fix.edits]
    .sort((a, b) => b.place.start - a.place.start)
    .reduce((now, e) => now.slice(0, e.place.start) + e.text + now.slice(e.place.end), text);
}

/** Quoted, as Markdown shows it. */
export function hovered(file: string, words: string): string {
  const text = readFileSync(file, 'utf8');
  const at = text.indexOf(words);
  if (at < 0) throw new Error(`${file} does not hold ‘${words}’.`);
  const { plan, study } = analysed(text, file);
  const found = hover(plan, study, at + words.length - 1);
  if (!found) throw new Error(`Nothing is shown over ‘${words}’.`);
  return found.markdown
    .trim()
    .split('\n')
    .map((l) => `> ${l}`.trimEnd())
    .join('\n');
}
