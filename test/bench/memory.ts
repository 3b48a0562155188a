/** Heap of an analyser over 10,000 random edits, garbage collected first: `node --expose-gc test/bench/memory.ts`. */
import { readFileSync } from 'node:fs';
import { createAnalyser } from '../../language/src/analyse.ts';
import { edits } from '../fuzz/text.ts';

const collect = (globalThis as { gc?: () => void }).gc;
if (!collect) throw new Error('Run with --expose-gc.');
const text = readFileSync('examples/still-life.paintplan', 'utf8');
const analyse = createAnalyser();
let done = 0;
for (const edited of edits(text, 5, 10_000)) {
  analyse(edited, 'file:///a.paintplan').findings({ colour: done % 10 === 0 });
  done++;
  if (done === 1000 || done % 3000 === 0 || done === 10_000) {
    collect();
    console.log(`after ${done} edits ${(process.memoryUsage().heapUsed / 1e6).toFixed(1)} MB`);
  }
}
