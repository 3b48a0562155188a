/** A short run of the fuzz suite, and that reading stays linear in the text. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { layersOf } from '../bench/texts.ts';
import { files } from '../cli/run.ts';
import { tries } from '../long.ts';
import { checkFormat, fuzzServer } from './server.ts';

const texts = files('examples', '.paintplan').map((f) => readFileSync(f, 'utf8'));

const EDITS = tries(200, 600);

test(`${EDITS} random edits through the real server`, async () => {
  const done = await fuzzServer(texts, 20270111, EDITS);
  expect(done.edits).toBe(EDITS);
  expect(done.compared).toBe(EDITS / 10);
});

test.each(texts.map((t, i) => [i, t] as const))(
  'formatting example %i keeps its meaning, in every line ending',
  (_, text) => {
    for (const eol of ['\n', '\r\n', '\r'])
      for (const bom of ['', '\ufeff']) checkFormat(bom + text.replaceAll('\n', eol));
  },
);

test('twice the layers take about twice the time', () => {
  const time = (count: number): number => {
    const text = layersOf(count);
    const times = [0, 1, 2].map(() => {
      const start = performance.now();
      createAnalyser()(text, 'file:///a.paintplan').findings({ colour: false });
      return performance.now() - start;
    });
    return Math.min(...times);
  };
  time(200);
  // quadratic work would make eight times the text sixty-four times as slow; machines are noisy, so the bound is wide
  expect(time(4000) / time(500)).toBeLessThan(28);
});
