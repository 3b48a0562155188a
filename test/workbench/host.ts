/**
 * The real workbench, from the npm registry: `code-server` carries it as a program for Node. It is installed once, outside
 * the tree, in a cache named after the lock file; later runs install nothing.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const WANTED = fileURLToPath(new URL('host', import.meta.url));
const FILES = ['package.json', 'package-lock.json'] as const;
export const CHROMIUM = '/usr/bin/chromium';

/** npm and all it starts run on this Node, whatever else is on the path. */
export const environment = (): NodeJS.ProcessEnv => ({
  ...process.env,
  PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH}`,
});

function install(folder: string, ...args: string[]): void {
  const { status, error } = spawnSync(
    'npm',
    [...args, '--ignore-scripts', '--omit=dev', '--no-audit', '--no-fund', '--loglevel=error'],
    { cwd: folder, env: environment(), stdio: ['ignore', 'inherit', 'inherit'] },
  );
  if (status !== 0)
    throw new Error(
      `The workbench could not be installed from the npm registry (npm ${args[0]} in ${folder} ${error ? `failed: ${error.message}` : `ended with ${status}`}). Nothing was tested.`,
    );
}

/** The workbench's server program, installed if need be. Throws where it, or the browser, is not to be had. */
export function workbenchHost(): string {
  if (!existsSync(CHROMIUM))
    throw new Error(
      `The workbench test wants Chromium at ${CHROMIUM}, and there is none. On Debian, as root: apt-get install chromium fonts-dejavu-core`,
    );
  const lock = readFileSync(join(WANTED, 'package-lock.json'));
  const name = createHash('sha256').update(lock).digest('hex').slice(0, 12);
  const folder = join(process.env.XDG_CACHE_HOME || join(homedir(), '.cache'), `paintplan-workbench-${name}`);
  const workbench = join(folder, 'node_modules', 'code-server', 'lib', 'vscode');
  const stamp = join(folder, 'complete');
  if (!existsSync(stamp)) {
    console.error(`Installing the workbench into ${folder} (about 600 MB, once) …`);
    // what a killed install left behind is not to be trusted
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    for (const file of FILES) copyFileSync(join(WANTED, file), join(folder, file));
    install(folder, 'ci');
    // not `ci`: the lock that the workbench ships leaves out an optional peer, which `ci` takes for a fault
    install(workbench, 'install', '--no-save');
    writeFileSync(stamp, '');
  }
  return join(workbench, 'out', 'server-main.js');
}
