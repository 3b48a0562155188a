/** Writes what the tool now says into the tutorial, and the plan it ends with into the examples. Read the difference. */
import { readFileSync, writeFileSync } from 'node:fs';
import { kept, page, walk } from './tutorial.ts';

const walked = await walk();
let changed = 0;
for (const [path, text] of [
  [page, walked.page] as const,
  ...kept.map(({ name, path }) => [path, walked.files.get(name) ?? ''] as const),
]) {
  let before: string | undefined;
  try {
    before = readFileSync(path, 'utf8');
  } catch {
    // not written before
  }
  if (before === text) continue;
  writeFileSync(path, text);
  changed++;
}
console.log(
  `${walked.blocks.length} blocks walked, ${walked.blocks.filter((b) => b.said !== b.should).length} were out of date, ${changed} files written.`,
);
