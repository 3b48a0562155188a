/** Workbenches with the packed extension inside: some run it in Node, some in a worker of the browser. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { environment } from './host.ts';

export const HOSTS = ['node', 'web'] as const;
export type Host = (typeof HOSTS)[number];

/** Whether the folders that are opened count as trusted; it is asked of the user where they do not. */
export const TRUSTS = ['trusted', 'untrusted'] as const;
export type Trust = (typeof TRUSTS)[number];

const SETTINGS = {
  'chat.disableAIFeatures': true,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.startupEditor': 'none',
  'workbench.editor.enablePreview': false,
  'workbench.reduceMotion': 'on',
  'security.workspace.trust.startupPrompt': 'never',
  'git.enabled': false,
  'editor.hover.delay': 100,
  // the browser workbench saves by itself after a second; a test must decide that
  'files.autoSave': 'off',
};

const settings = (host: Host, trust: Trust) => ({
  ...SETTINGS,
  'security.workspace.trust.enabled': trust === 'untrusted',
  ...(host === 'web' ? { 'remote.extensionKind': { 'paintplan.paintplan-vscode': ['web'] } } : {}),
});

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer()
      .once('error', reject)
      .listen(0, '127.0.0.1', () => {
        const address = probe.address();
        probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
      });
  });

// add-ons in C++ (logging, terminal) are not built here; the server says so at length and goes on
const withoutNoise = (text: string) =>
  text
    .split('\n')
    .filter(
      (l) => l.trim() && !/spdlog|bindings|^ → |^\s+at |^\s*(\]|\}|tries: \[|code: |requireStack)/.test(l),
    )
    .join('\n');

const STARTED_IN_MS = 60_000;

async function answering(port: number, server: ChildProcess, log: readonly string[]): Promise<void> {
  const end = Date.now() + STARTED_IN_MS;
  while (server.exitCode === null && Date.now() < end) {
    const up = await fetch(`http://127.0.0.1:${port}/version`).then(
      (r) => r.ok,
      () => false,
    );
    if (up) return;
    await new Promise((r) => setTimeout(r, 100));
  }
  throw new Error(`The workbench did not come up on port ${port}:\n${withoutNoise(log.join(''))}`);
}

/** Ends a server and all it started; to be called when the process ends, so it waits for nothing. */
export type End = () => void;

const environmentIn = (run: string) => ({
  ...environment(),
  EXTENSIONS_GALLERY: '{"serviceUrl":""}',
  TMPDIR: run,
  XDG_RUNTIME_DIR: run,
  XDG_CACHE_HOME: run,
  HOME: run,
});

/** Folders of a server, all below `root`; the installed extension is the same for all. */
function folders(root: string, name: string) {
  const at = (path: string) => {
    const made = join(root, path);
    mkdirSync(made, { recursive: true });
    return made;
  };
  const user = at(join(name, 'user'));
  const options = ['--user-data-dir', user, '--server-data-dir', at(join(name, 'server'))];
  return {
    settings: join(at(join(name, 'user', 'User')), 'settings.json'),
    options: [...options, '--extensions-dir', at('extensions')],
    env: environmentIn(at(join(name, 'run'))),
  };
}

/** Puts the packed extension where all servers below `root` find it. */
export function installExtension(program: string, vsix: string, root: string): void {
  const { options, env } = folders(root, 'install');
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [program, '--install-extension', vsix, ...options],
    { env, encoding: 'utf8' },
  );
  if (status !== 0 || !/successfully installed/.test(stdout))
    throw new Error(`The workbench did not take the VSIX:\n${withoutNoise(stdout + stderr)}`);
}

/** Starts a server and gives its address. `track` is told of the process before anything can go wrong with it. */
export async function serve(
  program: string,
  root: string,
  host: Host,
  trust: Trust,
  track: (end: End) => void,
): Promise<string> {
  const { options, env, settings: file } = folders(root, `${host}-${trust}`);
  writeFileSync(file, JSON.stringify(settings(host, trust), null, 2));
  const port = await freePort();
  const log: string[] = [];
  const server = spawn(
    process.execPath,
    [
      program,
      ...['--host', '127.0.0.1', '--port', String(port), '--without-connection-token'],
      ...['--accept-server-license-terms', '--telemetry-level', 'off', ...options],
    ],
    // a group of its own, so that the extension hosts it starts end with it
    { env, detached: true, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  track(() => {
    try {
      if (server.pid) process.kill(-server.pid, 'SIGKILL');
    } catch {
      // already gone
    }
  });
  for (const stream of [server.stdout, server.stderr]) stream.on('data', (d) => log.push(String(d)));
  await answering(port, server, log);
  return `http://127.0.0.1:${port}/`;
}
