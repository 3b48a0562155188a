/** No package runs a script of its own while it is installed, and what would is named with its reason. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const read = (path: string) => readFileSync(join(root, path), 'utf8');
const lock = JSON.parse(read('package-lock.json')) as {
  packages: Record<
    string,
    { hasInstallScript?: boolean; integrity?: string; link?: boolean; inBundle?: boolean }
  >;
};
const { allowScripts } = JSON.parse(read('package.json')) as { allowScripts: Record<string, boolean> };

/** The package at a place of the tree, without the folders it is nested in. */
const nameOf = (path: string) => path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);

test('the packages with scripts are exactly those refused', () => {
  const scripted = Object.entries(lock.packages).filter(([, p]) => p.hasInstallScript);
  expect([...new Set(scripted.map(([path]) => nameOf(path)))].sort()).toEqual(
    Object.keys(allowScripts).sort(),
  );
  expect(Object.values(allowScripts).every((allowed) => allowed === false)).toBe(true);
});

test('each has its reason on the page', () => {
  const page = read('language/docs/security.md');
  for (const name of Object.keys(allowScripts))
    expect(page).toMatch(new RegExp(`^\\| \`${name}\` \\| .+ \\| .+ \\|$`, 'm'));
});

test('our own installing asks for none either', () => {
  expect(read('language/build/ready.mjs')).toMatch(/'ci', '--ignore-scripts'/);
  for (const manifest of ['package.json', 'language/package.json', 'extension/package.json'])
    for (const script of ['preinstall', 'install', 'postinstall', 'prepare', 'prepublish'])
      expect(JSON.parse(read(manifest)).scripts?.[script], `${manifest} ${script}`).toBeUndefined();
});

test('every package is fixed by its hash', () => {
  for (const [path, p] of Object.entries(lock.packages))
    if (path.includes('node_modules/') && !p.link && !p.inBundle)
      expect(p.integrity, path).toMatch(/^sha512-/);
});
