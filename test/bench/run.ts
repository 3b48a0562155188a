/**
 * Prints what was measured; asserts nothing. `npm run bench`, with names to run only some (`-- colour`), `-- --no-peers`
 * without the other language servers (they are installed into a temporary folder), `-- --page` to write the page.
 */
import { writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { table } from '../../language/build/page.ts';
import { tool } from '../../language/src/study/tool.ts';
import { colourErrors, colourSpeed, matchLosses, transferErrors } from './colour.ts';
import { heavy } from './heavy.ts';
import { parsing, slips } from './parsing.ts';
import { sizes, starting } from './starting.ts';
import { plain, type Table } from './table.ts';
import { inOneProcess, overTheProtocol } from './typing.ts';

const asked = process.argv.slice(2);
const benches: Readonly<Record<string, () => Promise<Table[]>>> = {
  colour: async () => [transferErrors(), ...colourErrors(), matchLosses(), colourSpeed()],
  parsing: async () => [await parsing(), slips()],
  heavy: async () => [heavy()],
  typing: async () => [inOneProcess(), await overTheProtocol(!asked.includes('--no-peers'))],
  starting: async () => [starting()],
  sizes: async () => [sizes()],
};
const names = asked.filter((a) => !a.startsWith('--'));
const unknown = names.find((n) => !Object.hasOwn(benches, n));
if (unknown) {
  console.error(`There is no bench ‘${unknown}’. There are: ${Object.keys(benches).join(', ')}.`);
  process.exit(2);
}

const cores = cpus();
const machine = `${cores.length} cores (${cores[0]?.model.trim() ?? 'unknown'}), ${Math.round(totalmem() / 2 ** 30)} GiB, ${process.platform} ${process.arch}, Node ${process.version}`;
console.log(`${machine}\n`);

const found: Table[] = [];
// for developers, so not on the page
const usual = Object.keys(benches).filter((name) => name !== 'parsing' && name !== 'heavy');
for (const name of names.length > 0 ? names : usual)
  for (const made of (await benches[name]?.()) ?? []) {
    found.push(made);
    console.log(plain(made));
  }

if (asked.includes('--page')) {
  const page = `# Accuracy and speed

Written by \`npm run bench -- --page\` on ${new Date().toISOString().slice(0, 10)}; ${tool.name} ${tool.version}, data ${tool.data}. Other work may have run on the machine, so read the ratios first: both sides of each were measured in one run. Times of another machine will differ, its ratios hardly.

<!-- cspell:disable-next-line -->
The machine: ${machine}.

What the figures of a plan are worth is told on [How the figures are made](figures.md), what the colours rest on under [Colour](colour.md).

${found.map((t) => `## ${t.title}\n\n${t.how}\n\n${table(t.head, t.rows)}\n`).join('\n')}`;
  writeFileSync(new URL('../../language/docs/measured.md', import.meta.url), page);
}
