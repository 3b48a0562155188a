/** The invariants of the house: arrows between rooms, sources for figures, one name everywhere, nothing generated gone stale. */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { FILE_ENDING, LANGUAGE_ID, TOOL_NAME, TOOL_VERSION } from '../language/src/plan/names.ts';
import { readPlan } from '../language/src/plan/read.ts';
import { rules } from '../language/src/rules/index.ts';
import { themes } from '../language/src/rules/themes.ts';

const root = new URL('..', import.meta.url).pathname;
const source = join(root, 'language', 'src');
const read = (path: string) => readFileSync(join(root, path), 'utf8');

function files(folder: string, ending: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith(ending) && !f.split(sep).includes('node_modules'))
    .map((f) => join(folder, f));
}

/** Every import of a TypeScript file; `import type` counts apart, since it carries no code. */
function imports(path: string): { readonly from: string; readonly typeOnly: boolean }[] {
  return [
    ...readFileSync(path, 'utf8').matchAll(/^(?:import|export)\s+(type\s+)?[^'"]*?from\s+'([^']+)'/gm),
  ].map((m) => ({
    from: m[2] as string,
    typeOnly: m[1] !== undefined,
  }));
}

/** A folder of language/src, or a file that lies there alone. */
const room = (path: string) => relative(source, path).split(sep)[0] as string;

/** The table in DEVELOPERS.md: rooms from the lowest up, each with what it may import. */
const MAY = new Map(
  [...read('DEVELOPERS.md').matchAll(/^\| `([\w.]+)` \|[^|]*\| ([^|]*) \|$/gm)].map((m) => [
    m[1] as string,
    (m[2] as string).split(', ').map((what) => what.replaceAll('`', '')),
  ]),
);

describe('rooms', () => {
  test('stand in the table in an order in which none imports a later one', () => {
    const rooms = [...MAY.keys()];
    expect(rooms.toSorted()).toEqual(readdirSync(source).toSorted());
    for (const [here, may] of MAY)
      for (const what of may) {
        if (what === 'nothing' || what === 'generated') continue;
        const there = what.replace('types of ', '');
        expect(rooms.slice(0, rooms.indexOf(here)), `${here} may import ${what}`).toContain(there);
      }
  });

  test.each(files(source, '.ts').map((f) => [relative(root, f)]))(
    '%s imports only what its room may',
    (path) => {
      const here = room(join(root, path));
      for (const { from, typeOnly } of imports(join(root, path))) {
        if (!from.startsWith('.')) continue;
        const there = from.includes('/generated/') ? 'generated' : room(join(root, path, '..', from));
        if (there === here) continue;
        const allowed = typeOnly ? [there, `types of ${there}`] : [there];
        expect(
          MAY.get(here)?.filter((what) => allowed.includes(what)),
          `${here} imports ${from}`,
        ).not.toEqual([]);
      }
    },
  );

  test('pure rooms know neither Langium nor an editor', () => {
    for (const pure of [
      'memory',
      'materials',
      'film',
      'drying',
      'optics',
      'studio',
      'permanence',
      'results',
      'study',
      'rules',
      'features',
      'report',
    ])
      for (const path of files(join(source, pure), '.ts'))
        for (const { from } of imports(path)) expect(from, path).not.toMatch(/langium|vscode/);
  });

  test('Langium stays in syntax and plan; the protocol stays in the server', () => {
    for (const path of files(source, '.ts')) {
      const from = imports(path).map((i) => i.from);
      if (!['syntax', 'plan'].includes(room(path))) expect(from.join(' '), path).not.toMatch(/\blangium\b/);
      if (room(path) !== 'server') expect(from.join(' '), path).not.toMatch(/vscode-/);
    }
  });

  test('no file is longer than its headings can explain', () => {
    for (const path of [...files(source, '.ts'), ...files(join(root, 'extension', 'src'), '.ts')])
      expect(readFileSync(path, 'utf8').split('\n').length, path).toBeLessThan(420);
  });

  test('no module comes back to itself through what it imports, types included', () => {
    const all = [...files(source, '.ts'), ...files(join(root, 'extension', 'src'), '.ts')];
    const done = new Set<string>();
    const circles: string[] = [];
    const walk = (path: string, chain: readonly string[]): void => {
      if (chain.includes(path))
        circles.push([...chain.slice(chain.indexOf(path)), path].map((p) => relative(root, p)).join(' → '));
      if (done.has(path) || chain.includes(path)) return;
      for (const { from } of imports(path))
        if (from.startsWith('.') && !from.includes('generated'))
          walk(join(path, '..', from), [...chain, path]);
      done.add(path);
    };
    for (const path of all) walk(path, []);
    expect(circles).toEqual([]);
  });
});

describe('rules', () => {
  test.each(rules.map((r) => [r.id, r] as const))('%s has its words and names its sources', (id, rule) => {
    expect(rule.title.length).toBeGreaterThan(3);
    expect(rule.why.length).toBeGreaterThan(30);
    expect(rule.whatToDo.length).toBeGreaterThan(10);
    expect(rule.sources.length).toBeGreaterThan(0);
    expect(existsSync(join(source, 'rules', rule.theme, `${id}.ts`)), `${id} has a file of its own`).toBe(
      true,
    );
  });
});

test('no rule imports another', () => {
  const themed = Object.keys(themes).map((theme) => join(source, 'rules', theme));
  for (const path of themed.flatMap((folder) => files(folder, '.ts')))
    for (const { from } of imports(path))
      expect(themed, `${relative(root, path)} imports ${from}`).not.toContain(join(path, '..', from, '..'));
});

describe('names', () => {
  test('one ending, one language id, one tool name, one version', () => {
    const manifest = JSON.parse(read('extension/package.json'));
    const language = JSON.parse(read('language/package.json'));
    expect(manifest.contributes.languages[0]).toMatchObject({ id: LANGUAGE_ID, extensions: [FILE_ENDING] });
    expect(language.name).toBe(TOOL_NAME);
    expect([language.version, manifest.version, JSON.parse(read('package.json')).version]).toEqual([
      TOOL_VERSION,
      TOOL_VERSION,
      TOOL_VERSION,
    ]);
    expect(Object.keys(language.bin)).toEqual([TOOL_NAME]);
  });

  test('the top level holds only what it should', () => {
    const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' })
      .split('\n')
      .filter(Boolean);
    const top = new Set(tracked.map((f) => f.split('/')[0] as string).filter((f) => !f.startsWith('.')));
    expect([...top].sort()).toEqual(
      [
        'DEVELOPERS.md',
        'LICENSE',
        'README.md',
        'examples',
        'extension',
        'language',
        'package-lock.json',
        'package.json',
        'test',
        'tsconfig.json',
      ].sort(),
    );
  });

  test('the lock file names versions, not download addresses', () => {
    const lock = JSON.parse(read('package-lock.json'));
    for (const [name, entry] of Object.entries<{ resolved?: string; link?: boolean }>(lock.packages))
      if (!entry.link) expect(entry.resolved, name).toBeUndefined();
  });
});

describe('documents', () => {
  const pages = [
    'README.md',
    'DEVELOPERS.md',
    'extension/README.md',
    ...files(join(root, 'language', 'docs'), '.md').map((f) => relative(root, f)),
  ];

  test.each(pages.map((p) => [p]))('every plan shown in %s parses', (page) => {
    for (const [, text = ''] of read(page).matchAll(/^```paintplan\n([\s\S]*?)^```/gm)) {
      const faults = readPlan(text, 'file:///snippet.paintplan').problems.filter(
        (p) => p.severity === 'error',
      );
      expect(
        faults.map((f) => f.message),
        text,
      ).toEqual([]);
    }
  });

  test.each(pages.map((p) => [p]))('links in %s lead somewhere', (page) => {
    for (const [, target = ''] of read(page).matchAll(/\]\((?!https?:|#|mailto:)([^)#\s]+)(?:#[^)]*)?\)/g))
      expect(existsSync(join(root, page, '..', target)), `${page} → ${target}`).toBe(true);
  });
});

test('no path of a machine, no registry host, in anything tracked', () => {
  const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' })
    .split('\n')
    .filter(Boolean);
  const host = new RegExp(['registry', 'npmjs'].join('\\.'));
  for (const path of tracked) {
    if (!existsSync(join(root, path)) || statSync(join(root, path)).size > 4_000_000) continue;
    const text = read(path);
    expect(host.test(text), path).toBe(false);
    expect(/\/(?:root|home\/\w+|work\/(?:main|shared))\//.test(text), path).toBe(false);
  }
});

describe('the code', () => {
  const tool = (name: string, ...args: string[]) => {
    try {
      execFileSync(process.execPath, [join(root, 'node_modules', name), ...args], {
        cwd: root,
        encoding: 'utf8',
        stdio: 'pipe',
      });
      return '';
    } catch (error) {
      const { stdout, stderr } = error as { stdout: string; stderr: string };
      return `${stdout}${stderr}`.slice(0, 4000);
    }
  };
  test(
    'has sound types',
    () => expect(tool('typescript/bin/tsc', '--noEmit', '-p', 'tsconfig.json')).toBe(''),
    180_000,
  );
  test(
    'keeps the house style',
    () => expect(tool('@biomejs/biome/bin/biome', 'check', '.')).toBe(''),
    60_000,
  );
});
