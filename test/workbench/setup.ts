/** Before any step: pack the extension, make the workbench ready, start both hosts and the browser. After all: end them. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import { CHROMIUM, environment, workbenchHost } from './host.ts';
import { type End, HOSTS, installExtension, serve, TRUSTS } from './servers.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** address of the browser */
    browser: string;
    /** addresses of the workbenches, by host and trust */
    workbenches: Record<string, string>;
    /** a temporary folder for copies of the folders that are opened */
    scratch: string;
  }
}

const REPOSITORY = fileURLToPath(new URL('../..', import.meta.url));
const SHOTS = fileURLToPath(new URL('shots', import.meta.url));

const BROWSER = [
  ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
];

function pack(): string {
  const { status } = spawnSync(process.execPath, ['extension/build/package.ts'], {
    cwd: REPOSITORY,
    env: environment(),
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (status !== 0) throw new Error('The extension could not be packed.');
  return join(REPOSITORY, 'extension', 'paintplan.vsix');
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const vsix = pack();
  const program = workbenchHost();
  rmSync(SHOTS, { recursive: true, force: true });
  mkdirSync(SHOTS, { recursive: true });

  const root = mkdtempSync(join(tmpdir(), 'paintplan-workbench-'));
  const ends: End[] = [];
  const endAll = () => {
    for (const end of ends.splice(0)) end();
    rmSync(root, { recursive: true, force: true, maxRetries: 5 });
  };
  // also after Ctrl+C, a failed setup or a fault of the runner
  process.once('exit', endAll);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
    process.once(signal, () => process.exit(130));

  const browser = await chromium.launchServer({ executablePath: CHROMIUM, args: BROWSER });
  ends.push(() => void browser.process().kill('SIGKILL'));
  installExtension(program, vsix, root);
  const workbenches: Record<string, string> = {};
  for (const host of HOSTS)
    for (const trust of TRUSTS)
      workbenches[`${host}-${trust}`] = await serve(program, root, host, trust, (end) => ends.push(end));
  project.provide('browser', browser.wsEndpoint());
  project.provide('workbenches', workbenches);
  project.provide('scratch', root);
  return async () => {
    await browser.close();
    endAll();
    process.removeListener('exit', endAll);
  };
}
