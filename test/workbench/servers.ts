/** Two workbenches with the packed extension inside: one runs it in Node, one in a worker of the browser. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { environment } from './host.ts';

export const HOSTS = ['node', 'web'] as const;
export type Host = (typeof HOSTS)[number];

export interface Served {
  readonly url: string;
  /** folder of the user's settings and of the logs */
  readonly user: string;
}

const SETTINGS = {
  'chat.disableAIFeatures': true,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.startupEditor': 'none',
  'workbench.editor.enablePreview': false,
  'workbench.reduceMotion': 'on',
  'security.workspace.trust.enabled': false,
  'git.enabled': false,
  'editor.hover.delay': 100,
  // the browser workbench saves by itself after a second; a test must decide that
  'files.autoSave': 'off',
};

export function writeSettings(host: Host, served: Served, settings: object): void {
  const kind = host === 'web' ? { 'remote.extensionKind': { 'paintplan.paintplan-vscode': ['web'] } } : {};
  writeFileSync(
    join(served.user, 'User', 'settings.json'),
    JSON.stringify({ ...SETTINGS, ...kind, ...settings }, null, 2),
  );
}

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

/** Below `root`: everything the server writes. `track` is told of the process before anything can go wrong with it. */
export async function serve(
  program: string,
  vsix: string,
  host: Host,
  root: string,
  track: (end: End) => void,
): Promise<Served> {
  const at = (name: string) => {
    const path = join(root, host, name);
    mkdirSync(path, { recursive: true });
    return path;
  };
  const served = { user: at('user') };
  at('user/User');
  const folders = [
    '--user-data-dir',
    served.user,
    '--server-data-dir',
    at('server'),
    '--extensions-dir',
    at('extensions'),
  ];
  const run = at('run');
  const env = {
    ...environment(),
    EXTENSIONS_GALLERY: '{"serviceUrl":""}',
    TMPDIR: run,
    XDG_RUNTIME_DIR: run,
    HOME: at('home'),
  };
  const installed = spawnSync(process.execPath, [program, '--install-extension', vsix, ...folders], {
    env,
    encoding: 'utf8',
  });
  if (installed.status !== 0 || !/successfully installed/.test(installed.stdout))
    throw new Error(
      `The workbench did not take the VSIX:\n${withoutNoise(installed.stdout + installed.stderr)}`,
    );
  const port = await freePort();
  const log: string[] = [];
  const server = spawn(
    process.execPath,
    [
      program,
      ...['--host', '127.0.0.1', '--port', String(port), '--without-connection-token'],
      ...['--accept-server-license-terms', '--telemetry-level', 'off', ...folders],
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
  return { ...served, url: `http://127.0.0.1:${port}/` };
}
