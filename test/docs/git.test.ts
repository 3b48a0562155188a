/** Every piece of language/docs/git-and-ci.md, taken from the page and run in a git repository of its own. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';

const root = new URL('../..', import.meta.url).pathname;
const page = readFileSync(join(root, 'language/docs/git-and-ci.md'), 'utf8');

/** The fenced blocks of a language, in order. */
const blocks = (language: string): string[] =>
  [...page.matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, 'gm'))].map((m) => m[1] as string);
const block = (language: string, words: string): string => {
  const found = blocks(language).find((b) => b.includes(words));
  if (found === undefined) throw new Error(`The page has no ${language} block with ‘${words}’`);
  return found;
};

const SOUND = `use "../palettes/earths.paintplan"
plan "Three pears, invented"
support linen 24 x 30 cm
ground priming { material acrylic }
underlayer grey { colour ochre   film thin }
`;
const NOTE =
  '# Invented\n\n<!-- paintplan layers of "../plans/pears.paintplan" -->\n<!-- paintplan end -->\n';

let repository: string;
const env = {
  ...process.env,
  PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH}`,
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'Invented',
  GIT_AUTHOR_EMAIL: 'invented@example.invalid',
  GIT_COMMITTER_NAME: 'Invented',
  GIT_COMMITTER_EMAIL: 'invented@example.invalid',
  GIT_PAGER: 'cat',
};
const put = (path: string, text: string) => {
  mkdirSync(dirname(join(repository, path)), { recursive: true });
  writeFileSync(join(repository, path), text);
};
const git = (...args: string[]) => execFileSync('git', args, { cwd: repository, env, encoding: 'utf8' });
const tried = (command: string, args: readonly string[], cwd = repository) => {
  const ran = spawnSync(command, args, { cwd, env, encoding: 'utf8', timeout: 120_000 });
  return { code: ran.status, said: ran.stdout + ran.stderr };
};
/** As the services run a step: each line in turn, ending at the first that fails. */
const sh = (script: string) => tried('sh', ['-e', '-c', script]);
const commit = () => tried('git', ['commit', '-q', '-m', 'Invented']);

beforeAll(() => {
  repository = realpathSync(mkdtempSync(join(tmpdir(), 'paintplan-git-')));
  git('init', '-q', '-b', 'main');
  put('.gitignore', 'node_modules/\nreports/\n*.sarif\nbefore.paintplan\ncomment.md\n');
  put('plans/pears.paintplan', SOUND);
  put('palettes/earths.paintplan', 'paint ochre = PY43 in linseed\n');
  put('notes/pears.md', NOTE);
  mkdirSync(join(repository, 'node_modules', '.bin'), { recursive: true });
  symlinkSync(join(root, 'language/bin/paintplan.js'), join(repository, 'node_modules/.bin/paintplan'));
  put('package.json', '{ "private": true }\n');
  git('add', '-A');
  expect(commit()).toEqual({ code: 0, said: '' });
});
afterAll(() => rmSync(repository, { recursive: true, force: true }));

describe.each(['core.hooksPath', '.git/hooks'])('the hook, by %s', (way) => {
  beforeAll(() => {
    git('reset', '-q', '--hard');
    put('hooks/pre-commit', block('sh', 'git checkout-index'));
    const [setting, copying] = [block('sh', 'core.hooksPath hooks'), block('sh', 'cp hooks/pre-commit')];
    expect(sh(way === 'core.hooksPath' ? setting : copying).code).toBe(0);
    if (way === '.git/hooks') git('config', '--unset', 'core.hooksPath');
  });

  test('stops a commit with an error, and says where it is', () => {
    put('plans/pears.paintplan', `${SOUND}glaze deep { colour PB99 }\n`);
    git('add', 'plans');
    const { code, said } = commit();
    expect(code).not.toBe(0);
    expect(said).toMatch(/plans\/pears\.paintplan[\s\S]*unknown-pigment/);
  });

  test('looks at what is staged, not at what lies in the folder', () => {
    put('plans/pears.paintplan', SOUND);
    expect(commit().code).not.toBe(0);
    git('reset', '-q', '--hard');
    put(`plans/sound ${way.length}.paintplan`, SOUND);
    git('add', 'plans');
    put(`plans/sound ${way.length}.paintplan`, 'glaze deep { colour PB99 }\n');
    // the palette that the plan uses is read as it is staged, too
    expect(commit()).toMatchObject({ code: 0 });
    git('reset', '-q', '--hard');
  });

  test('stays out of the way of commits without plans and of plans taken away', () => {
    put('notes/other.txt', way);
    git('add', 'notes');
    git('rm', '-q', `plans/sound ${way.length}.paintplan`);
    expect(commit()).toMatchObject({ code: 0, said: '' });
  });
});

describe('the diff', () => {
  beforeAll(() => {
    git('reset', '-q', '--hard');
    put('hooks/plan-diff', block('sh', 'paintplan compare "$2"'));
    put('.gitattributes', blocks('gitattributes')[0] as string);
    expect(sh(block('sh', 'diff.paintplan.command')).code).toBe(0);
    git('add', '.gitattributes');
    put('plans/pears.paintplan', SOUND.replace('film thin', 'film 12 µm'));
  });
  afterAll(() => git('reset', '-q', '--hard'));

  test('says what changed in meaning, from any folder', () => {
    for (const cwd of [repository, join(repository, 'plans')]) {
      const { code, said } = tried('git', ['diff'], cwd);
      expect(code).toBe(0);
      expect(said).toMatch(/pears\.paintplan/);
      expect(said).toMatch(/grey/);
      expect(said).not.toMatch(/^@@/m);
      // the old version found the palette that it uses
      expect(said).not.toMatch(/cannot be|use-missing|unknown-name/);
    }
    expect(git('diff', '--no-ext-diff')).toMatch(/^\+underlayer grey .* 12 µm/m);
  });

  test('tells of plans added and taken away, and works for older commits when asked', () => {
    put('plans/new.paintplan', SOUND);
    git('add', 'plans/new.paintplan');
    git('rm', '-q', '--cached', 'palettes/earths.paintplan');
    const said = git('diff', '--cached');
    expect(said).toMatch(/plans\/new\.paintplan: added or taken away/);
    expect(said).toMatch(/palettes\/earths\.paintplan: added or taken away/);
    git('add', 'plans/pears.paintplan', 'palettes');
    expect(commit().code).toBe(0);
    expect(git('show', '--ext-diff', '--format=')).toMatch(/grey/);
  });
});

interface Step {
  readonly run?: string;
  readonly uses?: string;
}

describe('the workflow', () => {
  const text = block('yaml', 'paintplan');
  const steps = (parse(text) as { jobs: { plans: { steps: Step[] } } }).jobs.plans.steps;
  const runs = steps.flatMap((s) => (s.run && !s.run.startsWith('npm ci') ? [s.run] : []));

  test('keeps to the schema of workflows', () => {
    const { validateWorkflow } = createRequire(import.meta.url)('@action-validator/core') as {
      validateWorkflow(text: string): { readonly errors: readonly unknown[] };
    };
    expect(validateWorkflow(text).errors).toEqual([]);
  });

  test('goes through on sound plans and filled notes, and leaves a log and a page for each', () => {
    git('reset', '-q', '--hard');
    expect(runs).toHaveLength(4);
    // a note that was never filled is out of date, and the last step says so
    const [checked, logged, reported, noted] = runs.map((r) => sh(r));
    expect([checked?.code, logged?.code, reported?.code, noted?.code]).toEqual([0, 0, 0, 1]);
    expect(noted?.said).toMatch(/\+\| /);
    git('add', 'notes');
    expect(commit().code).toBe(0);
    expect(runs.map((r) => sh(r).code)).toEqual([0, 0, 0, 0]);
    expect(JSON.parse(readFileSync(join(repository, 'plans.sarif'), 'utf8')).version).toBe('2.1.0');
    expect(readdirSync(join(repository, 'reports'))).toContain('pears.html');
  }, 120_000);

  test('fails on an error, marks its line, and still leaves the log and the pages', () => {
    put('plans/pears.paintplan', `${SOUND}glaze deep { colour PB99 }\n`);
    const [checked, logged, reported] = runs.map((r) => sh(r));
    expect(checked).toMatchObject({ code: 1 });
    expect(checked?.said).toMatch(/^::error file=plans\/pears\.paintplan,line=6,.*title=unknown-pigment::/m);
    expect([logged?.code, reported?.code]).toEqual([0, 0]);
    expect(readFileSync(join(repository, 'plans.sarif'), 'utf8')).toMatch(/unknown-pigment/);
    git('reset', '-q', '--hard');
  }, 120_000);
});

test('the lines for any pipeline run as they stand', () => {
  git('reset', '-q', '--hard');
  git('update-ref', 'refs/remotes/origin/main', 'HEAD');
  const lines = block('sh', 'format --check plans').replace(/^npm ci.*\n/, '');
  expect(lines).not.toMatch(/npm ci/);
  // canonical form first, as the page's second command asks
  expect(sh('npx --no paintplan format plans').code).toBe(0);
  expect(sh(lines).code).toBe(0);
  expect(existsSync(join(repository, 'reports/pears.html'))).toBe(true);
  put('plans/pears.paintplan', SOUND.replace('film thin', 'film 400 µm'));
  expect(sh(block('sh', 'git show origin/main'))).toMatchObject({ code: 0 });
  expect(readFileSync(join(repository, 'comment.md'), 'utf8')).toMatch(/grey/);
  git('reset', '-q', '--hard');
}, 120_000);

test('every block of the page is one that ran here, or installs', () => {
  expect(
    blocks('sh').filter((b) => /^npm install|^#!\/bin\/sh|^chmod|^cp hooks|^npm ci|^git show/.test(b)),
  ).toEqual(blocks('sh'));
  expect(blocks('sh')).toHaveLength(8);
  expect([blocks('yaml').length, blocks('gitattributes').length]).toEqual([1, 1]);
  expect(page.match(/^```\w+$/gm)).toHaveLength(10);
});
