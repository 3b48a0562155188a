// Makes a fresh clone ready, then runs one task: installs the locked dependencies when they are missing or stale,
// builds what is stale, and hands over to the Node that the lock file brings (22 or later is needed; any 20 gets here).
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bin = join(root, 'node_modules', '.bin');
const env = { ...process.env, PATH: bin + delimiter + process.env.PATH };
const windows = process.platform === 'win32';

function run(command, args) {
  const { status, error } = spawnSync(command, args, { cwd: root, env, stdio: 'inherit', shell: windows });
  if (error) console.error(`Could not run ${command}: ${error.message}`);
  if (status !== 0) process.exit(status ?? 1);
}

function install() {
  const stamp = join(root, 'node_modules', '.paintplan-lock');
  const lock = readFileSync(join(root, 'package-lock.json'), 'utf8');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return;
  console.error('Installing the locked dependencies …');
  // no package may run code of its own while it is installed; see language/docs/security.md
  run('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund']);
  writeFileSync(stamp, lock);
}

/** The newest change below some folders, in ms. */
function newest(...folders) {
  let time = 0;
  for (const folder of folders)
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true }))
      if (entry.isFile())
        time = Math.max(time, statSync(join(entry.parentPath ?? entry.path, entry.name)).mtimeMs);
  return time;
}

function build() {
  const made = join(root, 'language', 'out', 'built');
  const sources = ['language/src', 'language/generated', 'language/build', 'extension/src'].map((f) =>
    join(root, f),
  );
  if (existsSync(made) && statSync(made).mtimeMs > newest(...sources)) return;
  run(node(), [join('language', 'build', 'bundle.ts')]);
}

function node() {
  return Number(process.versions.node.split('.')[0]) >= 22
    ? process.execPath
    : join(bin, windows ? 'node.cmd' : 'node');
}

const [task, ...rest] = process.argv.slice(2);
const tasks = {
  start: () => run(node(), [join('language', 'build', 'start.ts'), ...rest]),
  test: () =>
    run(node(), [
      join('node_modules', 'vitest', 'vitest.mjs'),
      'run',
      '--config',
      'test/vitest.config.ts',
      ...rest,
    ]),
  build: () => {},
  node: () => run(node(), rest),
};
if (!Object.hasOwn(tasks, task)) {
  console.error(`Usage: node language/build/ready.mjs ${Object.keys(tasks).join('|')} [arguments]`);
  process.exit(2);
}
install();
build();
tasks[task]();
