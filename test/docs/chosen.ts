/** The lines of an output that a page shows. */

const indent = (line: string) => line.search(/\S/);

/** A line and what is indented below it. */
function withItsOwn(lines: readonly string[], at: number): readonly [number, number] {
  let to = at + 1;
  while (to < lines.length && indent(lines[to] as string) > indent(lines[at] as string)) to++;
  return [at, to];
}

/** The line that begins with the words, or else the first that holds them. */
function lineOf(lines: readonly string[], words: string): number {
  const begun = lines.findIndex((l) => l.trimStart().startsWith(words));
  const at = begun >= 0 ? begun : lines.findIndex((l) => l.includes(words));
  if (at < 0) throw new Error(`‘${words}’ is not in the output:\n${lines.join('\n')}`);
  return at;
}

/** What is shown for `WORDS`, `WORDS +3` with three lines more, `every WORDS` or `last line`. */
function picked(lines: readonly string[], show: string): (readonly [number, number])[] {
  if (show === 'last line') return [[lines.length - 1, lines.length]];
  const every = /^every (.+)$/.exec(show)?.[1];
  if (every !== undefined) {
    lineOf(lines, every);
    return lines.flatMap((l, i) => (l.includes(every) ? [withItsOwn(lines, i)] : []));
  }
  const [, words = show, more] = /^(.*?)(?: \+(\d+))?$/.exec(show) ?? [];
  const at = lineOf(lines, words);
  return [more === undefined ? withItsOwn(lines, at) : [at, at + 1 + Number(more)]];
}

/** All of it, or what is asked for in the order of the output, with `…` where lines are left out. */
export function chosen(output: string, show: readonly string[] | undefined): string {
  const lines = output.trimEnd().split('\n');
  if (!show) return lines.join('\n');
  const keep = new Set<number>();
  for (const words of show) {
    for (const [from, to] of picked(lines, words)) for (let i = from; i < to; i++) keep.add(i);
  }
  const shown: string[] = [];
  let left: string[] = [];
  const gap = () => {
    if (left.some((l) => l !== '')) shown.push('…');
    else shown.push(...left);
    left = [];
  };
  lines.forEach((line, i) => {
    if (!keep.has(i)) left.push(line);
    else {
      gap();
      shown.push(line);
    }
  });
  gap();
  return shown.join('\n');
}
