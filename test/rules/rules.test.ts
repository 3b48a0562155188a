/** Every rule on its marked plans: where it must speak, with the figures; where it must be silent; what its fixes do. */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { rules } from '../../language/src/rules/index.ts';
import { applied, comments, counts, type Example, examplesOf, folder, judged, marks } from './harness.ts';

const named = (list: readonly Example[]): [string, Example][] => list.map((e) => [e.file, e]);
const lineOf = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;

test('every folder belongs to a rule', () => {
  const ids = rules.map((r) => r.id);
  const folders = readdirSync(folder, { withFileTypes: true }).filter((f) => f.isDirectory());
  for (const { name } of folders) expect(ids).toContain(name);
});

test('rules stand in order of their ids, each once', () => {
  const ids = rules.map((r) => r.id);
  expect(ids).toEqual([...new Set(ids)].sort());
});

describe.each(rules.map((r) => [r.id, r] as const))('%s', (id, rule) => {
  const speaks = examplesOf(id, 'speaks');
  const silent = examplesOf(id, 'silent');

  test('has its words, its sources and its plans', () => {
    expect(rule.title).toMatch(/^[A-Z].{3,60}[^.]$/);
    expect(rule.why).toMatch(/^[A-Z‘].{30,}\.$/s);
    expect(rule.whatToDo).toMatch(/^[A-Z‘].{10,}\.$/s);
    expect(rule.sources.length).toBeGreaterThan(0);
    for (const s of rule.sources) expect(s.text.length).toBeGreaterThan(5);
    expect(speaks.length, 'a plan in which it speaks').toBeGreaterThan(0);
    expect(silent.length, 'a plan in which it is silent').toBeGreaterThan(0);
  });

  if (speaks.length > 0)
    test.each(named(speaks))('%s: speaks where it is marked', (_, example) => {
      const found = judged(example.text, example).filter((f) => f.rule === id);
      const wanted = marks(example.text);
      expect(wanted.length, 'marks').toBeGreaterThan(0);
      const told = (start: number, severity: string) =>
        `line ${lineOf(example.text, start)}: ${severity} at ‘${example.text.slice(start, start + 12).split('\n')[0]}’`;
      expect(
        found.map((f) => told(f.place.start, f.severity)).sort(),
        found.map((f) => f.message).join('\n'),
      ).toEqual(wanted.map((m) => told(m.start, m.severity)).sort());
      for (const mark of wanted) {
        const here = found.filter((f) => f.place.start === mark.start && f.severity === mark.severity);
        const match = here.find(
          (f) =>
            mark.texts.every((t) => f.message.includes(t)) &&
            (mark.fixes === undefined || f.fixes.length === mark.fixes),
        );
        expect(
          match,
          `line ${mark.line}: ${mark.texts.join(' | ')} (${mark.fixes ?? 'any'} fixes)\nfound: ${here.map((f) => `${f.message} (${f.fixes.length} fixes)`).join('\n')}`,
        ).toBeDefined();
      }
      for (const f of found) {
        expect(f.place.end).toBeGreaterThanOrEqual(f.place.start);
        expect(f.message).not.toMatch(/NaN|Infinity|undefined|\[object/);
        expect(f.message).toMatch(/[.?!]$/);
      }
    });

  if (speaks.length > 0)
    test.each(named(speaks))(
      '%s: each fix takes its finding away, adds none and keeps every comment',
      (_, example) => {
        const before = judged(example.text, example);
        for (const finding of before.filter((f) => f.rule === id))
          for (const fix of finding.fixes) {
            const text = applied(example.text, fix, example.uri);
            const after = judged(text, example);
            const own = (list: typeof after) => list.filter((f) => f.rule === id);
            const what = `‘${fix.title}’ for: ${finding.message}`;
            expect(
              own(after).length,
              `${what} leaves\n${own(after)
                .map((f) => f.message)
                .join('\n')}\nin\n${text}`,
            ).toBeLessThan(own(before).length);
            for (const [rule, n] of counts(after, finding.severity))
              expect(
                n,
                `${what} adds ${rule}: ${after
                  .filter((f) => rule.startsWith(`${f.rule} `))
                  .map((f) => f.message)
                  .join('\n')}\nin\n${text}`,
              ).toBeLessThanOrEqual(counts(before, finding.severity).get(rule) ?? 0);
            expect(comments(text), what).toEqual(comments(example.text));
          }
      },
    );

  if (silent.length > 0)
    test.each(named(silent))('%s: is silent', (_, example) => {
      expect(
        judged(example.text, example)
          .filter((f) => f.rule === id)
          .map((f) => `line ${lineOf(example.text, f.place.start)}: ${f.message}`),
      ).toEqual([]);
    });
});
