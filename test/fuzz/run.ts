/** `npm run fuzz -- --minutes 10 --seed 7`: the fuzz suite for as long as wanted. */
import { readFileSync } from 'node:fs';
import { files } from '../cli/run.ts';
import { fuzzServer } from './server.ts';

const option = (name: string, otherwise: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  const value = at < 0 ? otherwise : Number(process.argv[at + 1]);
  if (!Number.isFinite(value) || value <= 0) {
    console.error(`--${name} takes a number above 0.`);
    process.exit(2);
  }
  return value;
};

const minutes = option('minutes', 1);
const seed = option('seed', Date.now() % 1_000_000);
console.log(`Seed ${seed}, ${minutes} minutes`);
const done = await fuzzServer(
  files('examples', '.paintplan').map((f) => readFileSync(f, 'utf8')),
  seed,
  Number.POSITIVE_INFINITY,
  Date.now() + minutes * 60_000,
);
console.log(
  `${done.edits} edits, ${done.compared} compared with the text alone, ${done.formatted} formatted; the server held ${Math.round(done.memory[0])} MB after 1,000 edits and ${Math.round(done.memory[1])} MB at the end.`,
);
