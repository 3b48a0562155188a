/** A rule and a field are added in a scratch copy as DEVELOPERS.md tells it; its examples are what is written. */
import { afterAll, describe, expect, test } from 'vitest';
import { long } from '../long.ts';
import { developers, example, original, scratch } from './scratch.ts';

const VITEST = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'test/vitest.config.ts'];
const TSC = ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.language.json'];
const copy = scratch('add-rule-and-field', [
  'language',
  'extension',
  'test',
  'examples',
  'package.json',
  'tsconfig.json',
  'DEVELOPERS.md',
]);
afterAll(copy.remove);
// what has to compile, without the tests, which take longer than all the rest
copy.write(
  'tsconfig.language.json',
  JSON.stringify({ extends: './tsconfig.json', include: ['language/src', 'language/generated'] }),
);

/** What is written under a path that DEVELOPERS.md names. */
const told = (kind: string, path: string): string => example(kind, `\`${path}\``);

describe('a rule', { timeout: 120_000 }, () => {
  const RULE = 'language/src/rules/glazes/many-coats.ts';
  const PLANS = ['speaks-thirteen', 'silent-twelve'].map((name) => `test/rules/many-coats/${name}.paintplan`);
  const own = () => copy.node(...VITEST, 'test/rules/rules.test.ts', '-t', '^many-coats');

  test('its file and plans written, its index and page built, is known and speaks', () => {
    copy.write(RULE, told('ts', RULE));
    for (const path of PLANS) copy.write(path, told('paintplan', path));
    for (const builder of ['rules-index', 'rules-page']) {
      expect(developers).toContain(`node language/build/${builder}.ts`);
      copy.done(`language/build/${builder}.ts`);
    }
    expect(copy.read('language/src/rules/index.ts')).toContain("from './glazes/many-coats.ts'");
    expect(copy.read('language/docs/rules.md')).toContain(
      '### many-coats\n\n**Very many coats.** Severity: hint.',
    );
    // that is as the command line, the server and the reports ask
    const said = copy.printed(`
      const { createAnalyser } = await import('./language/src/analyse.ts');
      const { rules } = await import('./language/src/rules/index.ts');
      const { readFileSync } = await import('node:fs');
      const said = (path) => createAnalyser()(readFileSync(path, 'utf8'), 'file:///a.paintplan').findings()
        .filter((f) => f.rule === 'many-coats').map((f) => f.severity + ': ' + f.message);
      console.log(JSON.stringify([rules.map((r) => r.id).includes('many-coats'), ...${JSON.stringify(PLANS)}.map(said)]));`);
    expect(said).toEqual([true, [expect.stringMatching(/^hint: glaze ‘mist’ has 13 coats/)], []]);
  });

  test('its marked plans are held to by the tests of the copy', () => {
    const { status, stdout } = own();
    expect(status, stdout).toBe(0);
    expect(stdout).toMatch(/Tests +4 passed/);
    if (!long) return;
    // and can fail
    copy.replace(PLANS[0]!, '13 coats', '14 coats');
    expect(own().status).toBe(1);
    copy.replace(PLANS[0]!, '14 coats', '13 coats');
    copy.done(...VITEST, 'test/rules/page.test.ts', 'test/tidy.test.ts', '-t', 'rule');
  });
});

describe('a field', { timeout: 240_000 }, () => {
  const GRAMMAR = 'language/grammar/paintplan.langium';
  const FIELDS = 'language/src/syntax/fields.ts';
  const alternative = told('langium', GRAMMAR);
  const row = told('ts', FIELDS);

  test('its word in the grammar and one row: it is read, compared, exported, bounded and offered', () => {
    expect(developers).toContain('`npm run generate`');
    const generate = JSON.parse(original('package.json')).scripts.generate as string;
    expect(generate).toMatch(/^langium /);
    copy.replace(GRAMMAR, alternative.replace(" | 'sittings'", ''), alternative);
    copy.done('node_modules/langium-cli/bin/langium.js', ...generate.split(' ').slice(1));
    if (long) {
      const { status, stdout } = copy.node(...TSC);
      expect(status, 'compiles without its row').not.toBe(0);
      expect(stdout).toMatch(/fields\.ts.*\n?.*sittings/);
    }
    copy.replace(FIELDS, 'export const layerFields = {\n', `export const layerFields = {\n${row}`);
    for (const builder of ['language-page', 'highlighting']) {
      expect(developers).toContain(`node language/build/${builder}.ts`);
      copy.done(`language/build/${builder}.ts`);
    }
    // the rule of above with it
    if (long) copy.done(...TSC);
    expect(copy.read('language/docs/language.md')).toContain(
      '| `sittings` (plans only) | how many sittings it takes |',
    );
    expect(copy.read('extension/syntaxes/paintplan.tmLanguage.json')).toMatch(/[|:]sittings\|/);

    const {
      plan,
      json,
      told: changes,
      findings,
      offered,
    } = copy.printed(`
      const { createAnalyser } = await import('./language/src/analyse.ts');
      const { compare } = await import('./language/src/report/compare.ts');
      const { studyJson } = await import('./language/src/study/json.ts');
      const { completion } = await import('./language/src/features/completion.ts');
      const text = (n) => 'plan "A"\\nglaze mist { colour PB29   sittings ' + n + ' }\\n';
      const read = (n) => { const r = createAnalyser()(text(n), 'file:///a.paintplan'); return { ...r, findings: r.findings() }; };
      const [two, three, many] = [read(2), read(3), read(90)];
      const typed = 'plan "A"\\nglaze mist { sit';
      console.log(JSON.stringify({
        plan: [two.plan.layers[0].sittings.value.likely, two.plan.problems],
        json: studyJson(two.study, 'a.paintplan', []).layers[0].stated,
        told: compare(two, three).layers.changed,
        findings: many.findings.filter((f) => f.rule === 'out-of-range').map((f) => f.message),
        offered: completion(createAnalyser()(typed, 'file:///a.paintplan').plan, typed, typed.length).items.map((i) => i.label),
      }));`);
    expect(plan).toEqual([2, []]);
    expect(JSON.stringify(json)).toContain('"sittings"');
    expect(changes).toMatchObject([{ changes: [{ what: 'sittings', before: '2', after: '3' }] }]);
    expect(findings).toEqual([expect.stringContaining('1 to 50')]);
    expect(offered).toContain('sittings');
  });

  test('the tests of the copy find it by its row', () => {
    const { status, stdout } = copy.node(...VITEST, 'test/plan/fields.test.ts', '-t', 'sittings');
    expect(status, stdout).toBe(0);
    expect(stdout).toMatch(/Tests +5 passed/);
    if (!long) return;
    // and say where an example of it is still wanted
    const wanted = copy.node(...VITEST, 'test/examples/coverage.test.ts');
    expect(wanted.status).toBe(1);
    expect(wanted.stdout).toContain('sittings');
  });
});
