/** The edits a tutorial asks of its reader: whole declarations, put in or exchanged. */

const word = (line: string | undefined) => /^\S+/.exec(line ?? '')?.[0];

/** From the first comment above the declaration to its last line. */
function spanOf(lines: readonly string[], head: string): readonly [number, number] {
  const at = lines.findIndex((l) => l === head || l.startsWith(`${head} `));
  if (at < 0) throw new Error(`There is no declaration ‘${head}’.`);
  let from = at;
  while (lines[from - 1]?.startsWith('//')) from--;
  let to = at;
  if (/\{[^}]*$/.test(lines[at] as string)) to = lines.indexOf('}', at);
  if (to < 0) throw new Error(`‘${head}’ is not closed.`);
  return [from, to + 1];
}

/** Lines that follow one another in one paragraph: two paints, two areas. */
const together = (above: string | undefined, below: string | undefined) =>
  word(above) === word(below) && ![above, below].some((l) => /[{}]/.test(l ?? ''));

function joined(above: readonly string[], snippet: string, below: readonly string[]): string {
  const middle = snippet.split('\n');
  const trimmed = [...above];
  while (trimmed.at(-1) === '') trimmed.pop();
  const rest = [...below];
  while (rest[0] === '') rest.shift();
  const gap = (a: string | undefined, b: string | undefined) =>
    a === undefined || b === undefined || together(a, b) ? [] : [''];
  return [
    ...trimmed,
    ...gap(trimmed.at(-1), middle[0]),
    ...middle,
    ...gap(middle.at(-1), rest[0]),
    ...rest,
  ].join('\n');
}

const ended = (text: string) => `${text.trimEnd()}\n`;

export const append = (text: string, snippet: string): string => ended(joined(text.split('\n'), snippet, []));

export function after(text: string, head: string, snippet: string): string {
  const lines = text.split('\n');
  const [, to] = spanOf(lines, head);
  return ended(joined(lines.slice(0, to), snippet, lines.slice(to)));
}

/** In place of one declaration, or of all from the first to the last named. */
export function instead(text: string, heads: readonly string[], snippet: string): string {
  const lines = text.split('\n');
  const from = spanOf(lines, heads[0] ?? '')[0];
  const to = spanOf(lines, heads.at(-1) ?? '')[1];
  return ended(joined(lines.slice(0, from), snippet, lines.slice(to)));
}

/** The declarations of a text that begin with the same two words as those of the snippet. */
export function declarationsAt(text: string, snippet: string): string {
  const lines = text.split('\n');
  const heads = snippet.split('\n').flatMap((l) => /^[a-z]\S* \S+/.exec(l)?.[0] ?? []);
  return heads.map((head) => lines.slice(...spanOf(lines, head)).join('\n')).join('\n\n');
}
