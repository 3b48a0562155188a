/**
 * Walks a page of documentation as its reader would, in an empty folder, and gives back the page as it should read.
 *
 * Comments that a reader does not see say what a block is:
 *   <!-- FILE: new -->, at the end, after DECLARATION, instead of DECLARATION [… DECLARATION], first fix of RULE
 *     before a ```paintplan block: what becomes of the file; for a fix, the block shows what it left behind
 *   ```sh block: commands, run; the ```text block after it is all they print, and without one they print nothing
 *   <!-- show: WORDS | every WORDS | WORDS +3 | last line --> between the two: only the line that begins with or holds
 *     these words, with what is indented below it or with so many lines more; `…` stands for the rest
 *   <!-- hover FILE: WORDS --> to <!-- end -->: what the editor shows over the last of these words
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { chosen } from './chosen.ts';
import { after, append, declarationsAt, instead } from './edit.ts';
import { applied, hovered } from './editor.ts';
import { typed } from './typed.ts';

export interface Block {
  /** of the page, from 1 */
  readonly line: number;
  readonly what: string;
  readonly said: string;
  readonly should: string;
}

const BLOCK =
  /<!-- (?<file>\S+\.paintplan): (?<how>.+) -->\n```paintplan\n(?<plan>[\s\S]*?)\n```|```sh\n(?<commands>[\s\S]*?)\n```(?:\n+(?:<!-- show: (?<show>.+) -->\n)?```text\n(?<said>[\s\S]*?)\n```)?|<!-- hover (?<over>\S+): (?<words>.+) -->\n(?<hover>[\s\S]*?)\n<!-- end -->/g;

function edited(file: string, how: string, snippet: string): string {
  const [, verb = '', rest = ''] = /^(new|at the end|after|instead of|fix) ?(.*)$/.exec(how) ?? [];
  if (verb === 'new') {
    writeFileSync(file, `${snippet}\n`);
    return snippet;
  }
  const text = readFileSync(file, 'utf8');
  if (verb === 'fix') {
    const [, nth = '', rule = ''] = /^(\d+) of (\S+)$/.exec(rest) ?? [];
    const now = applied(text, file, rule, Number(nth));
    writeFileSync(file, now);
    return declarationsAt(now, snippet);
  }
  if (verb === 'at the end') writeFileSync(file, append(text, snippet));
  else if (verb === 'after') writeFileSync(file, after(text, rest, snippet));
  else if (verb === 'instead of') writeFileSync(file, instead(text, rest.split(' … '), snippet));
  else throw new Error(`‘${how}’ does not say what becomes of ${file}.`);
  return snippet;
}

/** Runs in the working directory, which should be empty. Throws where a comment names what is not there. */
export async function replay(page: string): Promise<{ readonly page: string; readonly blocks: Block[] }> {
  const blocks: Block[] = [];
  let now = '';
  let done = 0;
  for (const found of page.matchAll(BLOCK)) {
    const { file = '', how, plan = '', commands, show, said, over, words = '', hover } = found.groups ?? {};
    const line = page.slice(0, found.index).split('\n').length;
    const [what, old, should] = await (async () => {
      if (how !== undefined) return [`${file}: ${how}`, plan, edited(file, how, plan)] as const;
      if (commands !== undefined)
        return [commands, said ?? '', chosen(await typed(commands), show?.split(' | '))] as const;
      return [`hover ${words}`, hover ?? '', hovered(over ?? '', words)] as const;
    })().catch((error: unknown) => {
      throw new Error(`Line ${line}: ${error instanceof Error ? error.message : error}`);
    });
    blocks.push({ line, what, said: old, should });
    const at = old === '' ? found[0].length : found[0].lastIndexOf(old);
    now += page.slice(done, found.index) + found[0].slice(0, at) + should;
    done = found.index + at + old.length;
  }
  return { page: now + page.slice(done), blocks };
}
