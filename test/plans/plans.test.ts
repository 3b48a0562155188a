/**
 * Plans a competent painter would call sound, of different schools, and plans with one seeded fault. Soundness is common
 * practice, not a published standard. Each was written as a painter would write it; where a rule objected wrongly, the rule was mended.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Judged, plansOf } from './judged.ts';

const named = (plans: readonly Judged[]): [string, Judged][] => plans.map((p) => [p.name, p]);
const said = ({ found }: Judged): string[] =>
  found
    .filter((f) => f.severity === 'error' || f.severity === 'warning')
    .map((f) => `${f.severity} ${f.rule}: ${f.message}`);
const sound = plansOf('sound');
const faulty = plansOf('faulty');

test('there are a dozen of each at least, all invented and saying so', () => {
  expect(sound.length).toBeGreaterThanOrEqual(12);
  expect(faulty.length).toBeGreaterThanOrEqual(12);
  for (const { kind, name } of [...sound, ...faulty])
    expect(readFileSync(join(import.meta.dirname, kind, `${name}.paintplan`), 'utf8')).toMatch(
      /^(\/\/ seeded: .*\n)?\/\/ Invented\. /,
    );
});

describe('sound', () => {
  test.each(named(sound))('%s: no error and no warning', (_, plan) => {
    expect(said(plan)).toEqual([]);
  });
});

describe('sound and quiet: nothing but what a painter has to be reminded of', () => {
  const REMINDERS = ['oily-rags', 'toxic-pigment', 'restricted-material', 'air-unknown'];
  test.each([
    'alkyd-week',
    'alla-prima',
    'grisaille-night',
    'lead-white-portrait',
    'no-spirit',
    'toned-rubbed',
    'verdaccio-glazes',
    'washes-under-veil',
  ])('%s', (name) => {
    const plan = sound.find((p) => p.name === name);
    const said = plan?.found.filter((f) => f.severity !== 'hint' && !REMINDERS.includes(f.rule));
    expect(said?.map((f) => `${f.rule}: ${f.message}`)).toEqual([]);
  });
});

describe('faulty', () => {
  test.each(named(faulty))('%s: the seeded fault and its consequences, nothing else', (name, plan) => {
    // a second plan with the same fault has it in its name, too
    expect(name.startsWith(plan.seeded[0] ?? 'no fault')).toBe(true);
    expect(plan.firm, said(plan).join('\n')).toEqual([...plan.seeded].sort());
  });
});
