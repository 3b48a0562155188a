/** The workflow files: sound by the published schema, running only what exists, with the least rights. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { releaseNotes, sectionOf } from '../../language/build/release-notes.ts';

const root = new URL('../..', import.meta.url).pathname;
const folder = join(root, '.github', 'workflows');
const names = readdirSync(folder);
const read = (path: string) => readFileSync(join(root, path), 'utf8');
const { validateWorkflow } = createRequire(import.meta.url)('@action-validator/core') as {
  validateWorkflow(text: string): { readonly errors: readonly unknown[] };
};

interface Job {
  readonly steps?: readonly { readonly uses?: string; readonly run?: string }[];
  readonly uses?: string;
  readonly needs?: string | readonly string[];
  readonly permissions?: Readonly<Record<string, string>>;
  readonly strategy?: { readonly matrix?: { readonly node?: readonly string[] } };
}
interface Workflow {
  readonly permissions?: Readonly<Record<string, string>>;
  readonly jobs: Readonly<Record<string, Job>>;
}

test('there are two', () => expect(names.sort()).toEqual(['check.yml', 'release.yml']));

describe.each(names.map((n) => [n]))('%s', (name) => {
  const text = readFileSync(join(folder, name), 'utf8');
  const workflow = parse(text) as Workflow;
  const jobs = Object.values(workflow.jobs);
  const steps = jobs.flatMap((j) => j.steps ?? []);
  const runs = steps.flatMap((s) => (s.run === undefined ? [] : [s.run]));

  test('keeps to the schema of workflows', () => expect(validateWorkflow(text).errors).toEqual([]));

  test('the validator would see a slip', () => {
    expect(validateWorkflow(text.replace('runs-on:', 'runs_on:')).errors.length).toBeGreaterThan(0);
  });

  test('runs only scripts that exist', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    const named = runs.flatMap((r) =>
      [...r.matchAll(/\bnpm run (?!-)([\w:-]+)/g)].map((m) => m[1] as string),
    );
    for (const script of named) expect(Object.keys(scripts), script).toContain(script);
    for (const run of runs)
      for (const [, script] of run.matchAll(/\bnpm (start|test)\b/g))
        expect(scripts).toHaveProperty(script as string);
    for (const [file] of runs
      .join('\n')
      .matchAll(/(?:\.ci|language|examples)\/[\w./-]+(?:run|\.ts|\.paintplan)\b/g))
      expect(existsSync(join(root, file)), file).toBe(true);
  });

  test('takes official actions only, each with its version', () => {
    for (const { uses } of steps) if (uses) expect(uses).toMatch(/^actions\/[\w-]+@(v\d+|[0-9a-f]{40})$/);
  });

  test('may read, and what may do more says so for one job', () => {
    expect(workflow.permissions).toEqual({ contents: 'read' });
    const more = jobs.flatMap((j) => Object.entries(j.permissions ?? {}).filter(([, v]) => v === 'write'));
    expect(more.map(([k]) => k).sort()).toEqual(name === 'release.yml' ? ['contents', 'id-token'] : []);
  });

  test('puts no words of others into a shell', () => {
    for (const run of runs) expect(run).not.toContain('${{');
  });

  test('waits only for jobs it has', () => {
    for (const job of jobs)
      for (const needed of [job.needs ?? []].flat()) expect(Object.keys(workflow.jobs)).toContain(needed);
  });
});

test('a release is linted, tested and audited before it is packed, and published after', () => {
  const { jobs } = parse(read('.github/workflows/release.yml')) as Workflow;
  const order = (jobs.pack?.steps ?? []).map((s) => s.run ?? s.uses ?? '');
  const at = (words: string) => order.findIndex((s) => s.includes(words));
  for (const words of ['npm run check', 'npm run audit', 'release-notes.ts'])
    expect(at(words), words).toBeGreaterThanOrEqual(0);
  expect(at('npm run audit')).toBeLessThan(at('npm run package'));
  expect(jobs.pack?.needs).toBe('check');
  expect(jobs.publish?.needs).toBe('release');
  expect(JSON.parse(read('package.json')).scripts.audit).toBe('npm audit --audit-level=high');
});

describe('release notes', () => {
  const versions = { 'a/package.json': '1.2.3' };
  const changelog = '# Changes\n\n## 1.2.3\n\n- This.\n\n## 1.2.2\n\n- That.\n\n## 1.0.0\n\n';

  test('are the section of the version', () => {
    expect(releaseNotes('v1.2.3', versions, changelog)).toEqual({ notes: '- This.' });
    expect(sectionOf(changelog, '1.2.2')).toBe('- That.');
    expect(sectionOf('## 1.2.3 (2027-01-11)\r\n\r\nText\r\n', '1.2.3')).toBe('Text');
  });

  test('fail on a missing or empty section, and on a tag that is not the version', () => {
    expect(sectionOf(changelog, '1.2')).toBeUndefined();
    expect(sectionOf(changelog, '1.0.0')).toBeUndefined();
    expect(releaseNotes('v1.2.2', versions, changelog)).toEqual({
      faults: ['a/package.json says 1.2.3, the tag says 1.2.2.'],
    });
    const none = releaseNotes('v9.0.0', versions, changelog);
    expect('faults' in none && none.faults.join('\n')).toMatch(/says 1\.2\.3[\s\S]*says nothing/);
  });

  test('the present version has its section', () => {
    const { version } = JSON.parse(read('package.json')) as { version: string };
    expect(sectionOf(read('language/CHANGELOG.md'), version)).toMatch(/\w/);
  });
});
