/** The packed extension, read from the artefact: what is in it, how large it is, and its server in both hosts. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createContext, runInContext } from 'node:vm';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { openPromise } from 'yauzl';
import { TOOL_VERSION } from '../../language/src/plan/names.ts';
import { startServer } from '../server/client.ts';

const root = new URL('../..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'paintplan-vsix-'));
const vsix = join(folder, 'paintplan.vsix');
const files = new Map<string, Buffer>();
const text = (name: string): string => files.get(`extension/${name}`)?.toString('utf8') ?? '';

beforeAll(async () => {
  execFileSync(process.execPath, ['extension/build/package.ts', vsix], { cwd: root, stdio: 'pipe' });
  const zip = await openPromise(vsix);
  for await (const entry of zip.eachEntry()) {
    const parts: Buffer[] = [];
    for await (const part of await zip.openReadStreamPromise(entry)) parts.push(part as Buffer);
    files.set(entry.fileName, Buffer.concat(parts));
  }
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('holds what it needs and nothing else, within its budget', () => {
  expect([...files.keys()].filter((f) => f.startsWith('extension/')).sort()).toEqual(
    [
      'LICENSE.txt',
      'THIRD-PARTY-NOTICES.md',
      'changelog.md',
      'icon/file.svg',
      'icon/icon.png',
      'language-configuration.json',
      'out/browser.js',
      'out/node.js',
      'out/server.js',
      'package.json',
      'preview/preview.css',
      'preview/preview.js',
      'readme.md',
      'syntaxes/paintplan.markdown.tmLanguage.json',
      'syntaxes/paintplan.tmLanguage.json',
      'walkthrough/findings.md',
      'walkthrough/first-plan.md',
      'walkthrough/preview.md',
    ].map((f) => `extension/${f}`),
  );
  expect(statSync(vsix).size).toBeLessThan(900_000);
  expect((files.get('extension/out/server.js') as Buffer).length).toBeLessThan(1_000_000);
});

test('every file the manifest names is there; the icon is a PNG of at least 128 pixels', () => {
  const manifest = JSON.parse(text('package.json'));
  const named = JSON.stringify(manifest).match(/"(?:\.\/)?[\w-]+\/[\w./-]+\.(?:js|json|md|svg|png)"/g) ?? [];
  expect(named.length).toBeGreaterThan(8);
  for (const path of named) expect([...files.keys()]).toContain(`extension/${path.replace(/"|\.\//g, '')}`);
  const icon = files.get(`extension/${manifest.icon}`) as Buffer;
  expect(icon.subarray(1, 4).toString()).toBe('PNG');
  expect(Math.min(icon.readUInt32BE(16), icon.readUInt32BE(20))).toBeGreaterThanOrEqual(128);
});

test('tells its changes, its licence and whose work it holds', () => {
  expect(text('changelog.md')).toContain(`## ${TOOL_VERSION}`);
  expect(text('LICENSE.txt')).toContain('MIT');
  const notices = text('THIRD-PARTY-NOTICES.md');
  for (const what of ['CC BY 4.0', 'CC0 1.0', 'Heritage Science 6:17', '10.1109/WHISPERS56178.2022.9955067'])
    expect(notices).toContain(what);
  for (const library of [
    'langium',
    'chevrotain',
    'colorjs.io',
    'vscode-languageclient',
    'vscode-languageserver',
  ])
    expect(notices).toMatch(new RegExp(`^###.*\\b${library.replace('.', '\\.')} \\d`, 'm'));
});

const faulty = 'plan "A"\nsupport linen 24 x 30 cm\npaint white = PW6 in linsed\n';

test('its server runs as a process', async () => {
  const path = join(folder, 'server.cjs');
  writeFileSync(path, files.get('extension/out/server.js') as Buffer);
  const client = await startServer({}, [path, '--stdio']);
  client.open('file:///a.paintplan', faulty);
  const { diagnostics } = await client.diagnostics('file:///a.paintplan');
  expect(diagnostics.map((d) => d.code)).toContain('unknown-material');
  await client.stop();
}, 60_000);

test('the same file runs as a worker of a browser, where there is neither require nor process', async () => {
  interface Message {
    readonly id?: number;
    readonly method?: string;
    readonly params?: { readonly diagnostics?: readonly { readonly code: string }[] };
  }
  const got: Message[] = [];
  const timers = { setTimeout, clearTimeout, setInterval, clearInterval, queueMicrotask };
  const web = { URL, TextDecoder, TextEncoder, performance, console, ...timers };
  const worker: Record<string, unknown> = {
    ...web,
    WorkerGlobalScope: class {},
    postMessage: (m: Message) => got.push(m),
    addEventListener: () => {},
  };
  worker.self = worker;
  createContext(worker);
  runInContext(text('out/server.js'), worker, { filename: 'server.js' });
  const until = (found: (m: Message) => boolean): Promise<Message> =>
    vi.waitFor(
      () => {
        const message = got.find(found);
        if (!message) throw new Error(`The worker said only: ${JSON.stringify(got).slice(0, 2000)}`);
        return message;
      },
      { timeout: 30_000 },
    );
  const send = (message: object) =>
    (worker.onmessage as (event: { data: object }) => void)({ data: { jsonrpc: '2.0', ...message } });

  await vi.waitFor(() => expect(worker.onmessage).toBeTypeOf('function'));
  send({
    id: 1,
    method: 'initialize',
    params: { processId: null, rootUri: null, capabilities: {}, workspaceFolders: null },
  });
  await until((m) => m.id === 1);
  send({ method: 'initialized', params: {} });
  const textDocument = { uri: 'memory:///a.paintplan', languageId: 'paintplan', version: 1, text: faulty };
  send({ method: 'textDocument/didOpen', params: { textDocument } });
  const { params } = await until((m) => m.method === 'textDocument/publishDiagnostics');
  expect(params?.diagnostics?.map((d) => d.code)).toContain('unknown-material');
}, 60_000);
