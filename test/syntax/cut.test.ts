/** Half-typed lines: texts cut at their tokens, by leaving the token out and by ending the text there. */
import { expect, test } from 'vitest';
import { createPlanMemo, readPlan } from '../../language/src/plan/read.ts';
import { langium } from '../../language/src/syntax/parser.ts';
import { tries } from '../long.ts';
import { samples, samplesHost } from '../plan/samples.ts';
import { lost, sayings } from './said.ts';

const uri = 'file:///cut.paintplan';
/** Every so many tokens: every one, or one in seven. */
const STEP = tries(7, 1);
const percent = (part: number, of: number) => `${((100 * part) / of).toFixed(2)} %`;

test('at least 97 % of the cuts lose nothing elsewhere', () => {
  let cuts = 0;
  let kept = 0;
  let truncatedKept = 0;
  let several = 0;
  let fieldCuts = 0;
  let fieldsKept = 0;
  for (const { text } of samples) {
    const memo = createPlanMemo();
    const whole = sayings(readPlan(text, uri, samplesHost, memo));
    for (const token of langium()
      .parser.Lexer.tokenize(text)
      .tokens.filter((_, i) => i % STEP === 0)) {
      const start = token.startOffset;
      const end = (token.endOffset as number) + 1;
      const plan = readPlan(text.slice(0, start) + text.slice(end), uri, samplesHost, memo);
      const after = sayings(plan);
      const others = whole.filter((d) => !(d.start <= start && start < d.end));
      const words = after.map((d) => d.words);
      cuts++;
      if (
        lost(
          others.map((d) => d.words),
          words,
        ).length === 0
      )
        kept++;
      if (plan.problems.filter((p) => p.rule === 'syntax').length > 1) several++;
      const own = whole.find((d) => d.fields.length > 0 && d.start <= start && start < d.end);
      // without its first word a layer is no layer; its fields cannot be kept
      if (own && own.start !== start) {
        fieldCuts++;
        if (
          lost(
            own.fields,
            after.flatMap((d) => d.fields),
          ).length <= 1
        )
          fieldsKept++;
      }
      const before = whole.filter((d) => d.end <= start && d.start >= 0).map((d) => d.words);
      const short = sayings(readPlan(text.slice(0, start), uri, samplesHost, memo)).map((d) => d.words);
      if (lost(before, short).length === 0) truncatedKept++;
    }
  }
  console.log(
    `cut at ${cuts} tokens of ${samples.length} texts: nothing lost elsewhere ${percent(kept, cuts)}, after ending the text there ${percent(truncatedKept, cuts)}; ` +
      `all other fields of the layer kept ${percent(fieldsKept, fieldCuts)}; more than one message ${percent(several, cuts)}`,
  );
  expect(cuts).toBeGreaterThan(tries(500, 1000));
  expect(kept / cuts).toBeGreaterThan(0.99);
  expect(truncatedKept / cuts).toBeGreaterThan(0.99);
  expect(fieldsKept / fieldCuts).toBeGreaterThan(0.97);
  expect(several / cuts).toBeLessThan(0.01);
});
