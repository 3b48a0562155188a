/** `npm start`: the main job on a shipped example, in the terminal and as a page. */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
process.chdir(root);
const { main } = (await import(new URL('../out/cli.js', import.meta.url).href)) as {
  main(args: readonly string[]): Promise<number>;
};

const plan = 'examples/still-life.paintplan';
console.log(`Studying ${plan}\n`);
await main(['study', plan]);
mkdirSync('report', { recursive: true });
const code = await main(['report', plan, '--to', 'html', '--out', 'report/still-life.html']);
console.log('\nThe report is report/still-life.html: open it in a browser.');
console.log('Try `npx paintplan check examples` next, or `npx paintplan --help`.');
process.exitCode = code === 2 ? 2 : 0;
