/**
 * Sound plans of different schools, which no rule may trouble with a warning, and plans with one fault each, in which
 * exactly that rule (and what follows from the fault) may speak. What counts as sound is common practice. The plans are
 * in `_quality`; a faulty one is named after the rule, with what follows after `Follows:` in its first line.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { findings } from '../../language/src/rules/check.ts';
import { study } from '../../language/src/study/build.ts';

const root = join(import.meta.dirname, '_quality');
const plans = (kind: 'sound' | 'faulty') =>
  readdirSync(join(root, kind))
    .sort()
    .map((file) => [file.replace('.paintplan', ''), join(root, kind, file)] as const);

const rows: string[] = [];

function judged(path: string) {
  const text = readFileSync(path, 'utf8');
  const plan = readPlan(text, pathToFileURL(path).href);
  const found = findings(plan, study(plan), { strict: true });
  return { text, found, firm: found.filter((f) => f.severity === 'error' || f.severity === 'warning') };
}

const row = (kind: string, name: string, { found, firm }: ReturnType<typeof judged>): void => {
  const count = (s: string) => found.filter((f) => f.severity === s).length;
  const cells = [
    kind.padEnd(6),
    name.padEnd(26),
    ...['error', 'warning', 'info', 'hint'].map((s) => String(count(s)).padStart(5)),
  ];
  rows.push(`${cells.join(' ')}  ${[...new Set(firm.map((f) => f.rule))].join(', ')}`);
};

afterAll(() => {
  console.log(['kind   plan                       error  warn  info  hint  firm rules', ...rows].join('\n'));
});

test('there are a dozen of each', () => {
  expect(plans('sound').length).toBeGreaterThanOrEqual(12);
  expect(plans('faulty').length).toBeGreaterThanOrEqual(12);
});

describe('sound', () => {
  test.each(plans('sound'))('%s: no error, no warning', (name, path) => {
    const result = judged(path);
    row('sound', name, result);
    expect(result.firm.map((f) => `${f.severity} ${f.rule}: ${f.message}`)).toEqual([]);
  });
});

describe('one fault', () => {
  test.each(plans('faulty'))('%s is found, and nothing else but what follows', (name, path) => {
    const result = judged(path);
    row('faulty', name, result);
    const follows = /^\/\/.*?Follows: (.*?)\.?$/m.exec(result.text)?.[1]?.split(', ') ?? [];
    const rules = [...new Set(result.firm.map((f) => f.rule))];
    const said = result.firm.map((f) => `${f.severity} ${f.rule}: ${f.message}`).join('\n');
    expect(rules, said).toContain(name);
    expect(
      rules.filter((r) => r !== name && !follows.includes(r)),
      said,
    ).toEqual([]);
  });
});
