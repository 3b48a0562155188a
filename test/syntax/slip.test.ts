/** A slip of a finger: one character put in, replaced, or swapped with its neighbour, at random places. */
import { expect, test } from 'vitest';
import { createPlanMemo, readPlan } from '../../language/src/plan/read.ts';
import { random } from '../fuzz/text.ts';
import { tries } from '../long.ts';
import { samples, samplesHost } from '../plan/samples.ts';
import { lost, sayings } from './said.ts';

const uri = 'file:///slip.paintplan';
const KEYS = 'abcxyz ;{}",+=0123-#/\n\'';

test('slips lose nothing elsewhere and make one message', () => {
  const next = random(5);
  let slips = 0;
  let kept = 0;
  let several = 0;
  for (const { text } of samples) {
    const memo = createPlanMemo();
    const whole = sayings(readPlan(text, uri, samplesHost, memo));
    for (let i = 0; i < tries(40, 300); i++) {
      const at = Math.floor(next() * text.length);
      const key = KEYS[Math.floor(next() * KEYS.length)] as string;
      const kind = Math.floor(next() * 3);
      const slip =
        kind === 0
          ? key + text.slice(at)
          : kind === 1
            ? key + text.slice(at + 1)
            : `${text[at + 1] ?? ''}${text[at]}${text.slice(at + 2)}`;
      const plan = readPlan(text.slice(0, at) + slip, uri, samplesHost, memo);
      const others = whole
        .filter((d) => d.start >= 0 && !(d.start - 10 <= at && at <= d.end))
        .map((d) => d.words.replace(/"description":"[^"]*"/, ''));
      slips++;
      if (
        lost(
          others,
          sayings(plan).map((d) => d.words.replace(/"description":"[^"]*"/, '')),
        ).length === 0
      )
        kept++;
      if (plan.problems.filter((p) => p.rule === 'syntax').length > 1) several++;
    }
  }
  console.log(
    `${slips} slips: nothing lost elsewhere ${((100 * kept) / slips).toFixed(2)} %, more than one message ${((100 * several) / slips).toFixed(2)} %`,
  );
  expect(kept / slips).toBeGreaterThan(0.98);
  expect(several / slips).toBeLessThan(0.04);
});
