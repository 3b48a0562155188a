/**
 * Typing speed over the real protocol, beside bare Langium on the same text and two other language servers on texts of
 * the same size, in one run. Prints times and their ratios; asserts nothing. `npm run bench`, `-- --no-peers` without
 * the others (they are installed into a temporary folder).
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAnalyser } from '../../language/src/analyse.ts';
import { parse } from '../../language/src/syntax/parser.ts';
import { startServer } from '../server/client.ts';
import { jsonOf, layersOf, planOf, yamlOf } from './texts.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ROUNDS = 30;

const quantile = (times: readonly number[], q: number): number =>
  [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * q))] as number;
const ms = (v: number) => `${v.toFixed(v < 10 ? 1 : 0)} ms`;

function timed(rounds: number, work: (i: number) => void): { readonly p50: number; readonly p95: number } {
  const times: number[] = [];
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    work(i);
    times.push(performance.now() - start);
  }
  return { p50: quantile(times, 0.5), p95: quantile(times, 0.95) };
}

/** One character typed in the middle, again and again; until the diagnostics of that version arrive. */
async function typing(
  command: readonly string[] | undefined,
  uri: string,
  languageId: string,
  text: string,
  type: (text: string, i: number) => string,
) {
  const started = performance.now();
  const client = await startServer({ rootUri: null, workspaceFolders: null }, command);
  const ready = performance.now() - started;
  client.open(uri, text, languageId);
  await client.diagnostics(uri);
  const times: number[] = [];
  for (let i = 0; i < ROUNDS; i++) {
    const next = type(text, i);
    const start = performance.now();
    client.change(uri, i + 2, next);
    await client.diagnosticsAfter(uri, i + 2);
    times.push(performance.now() - start);
    // a person does not type while the colours are computed
    await new Promise((r) => setTimeout(r, 20));
  }
  await client.stop();
  return { ready, p50: quantile(times, 0.5), p95: quantile(times, 0.95) };
}

const inMiddle = (text: string, i: number): string => {
  const at = text.indexOf('\n', text.length / 2) + 1;
  return `${text.slice(0, at)}// ${'x'.repeat(i + 1)}\n${text.slice(at)}`;
};

console.log(`Node ${process.version}, ${ROUNDS} keystrokes each\n`);

console.log('Parse and check in one process, beside bare Langium (whole-file parse) of the same text');
for (const count of [10, 100, 1000]) {
  const text = layersOf(count);
  const bare = timed(8, (i) => parse(`${text}// ${i}\n`, 'Model'));
  const analyse = createAnalyser();
  const cold = timed(1, () => createAnalyser()(text, 'file:///a.paintplan').findings({ colour: false }));
  const warm = timed(12, (i) =>
    analyse(inMiddle(text, i), 'file:///a.paintplan').findings({ colour: false }),
  );
  const coloured = timed(1, () => createAnalyser()(text, 'file:///a.paintplan').findings());
  console.log(
    `  ${String(count).padStart(4)} layers: bare parse ${ms(bare.p50)}; cold plan, study and rules ${ms(cold.p50)}; after a keystroke ${ms(warm.p50)} (${(warm.p50 / bare.p50).toFixed(2)} × bare); with colours, cold ${ms(coloured.p50)}`,
  );
}

const bundle = join(root, 'language/out/server.js');
const own = existsSync(bundle) ? [bundle, '--stdio'] : undefined;
console.log(
  `\nKeystroke to diagnostics over stdio (${own ? 'bundle' : 'sources: run npm run build for the bundle'})`,
);
for (const [name, size] of [
  ['10 KB', 10_000],
  ['100 KB', 100_000],
  ['1 MB', 1_000_000],
] as const) {
  const { ready, p50, p95 } = await typing(own, 'file:///a.paintplan', 'paintplan', planOf(size), inMiddle);
  const bare = timed(5, (i) => parse(`${planOf(size)}// ${i}\n`, 'Model'));
  console.log(
    `  ${name.padEnd(7)} p50 ${ms(p50)}, p95 ${ms(p95)}; initialised ${ms(ready)}; bare parse ${ms(bare.p50)} (p50 is ${(p50 / bare.p50).toFixed(2)} ×)`,
  );
}

if (!process.argv.includes('--no-peers')) {
  const folder = mkdtempSync(join(tmpdir(), 'paintplan-peers-'));
  execFileSync(
    'npm',
    [
      'install',
      '--no-audit',
      '--no-fund',
      '--silent',
      '--prefix',
      folder,
      'yaml-language-server',
      'vscode-langservers-extracted',
    ],
    { stdio: 'inherit' },
  );
  const bin = (name: string) => join(folder, 'node_modules', name);
  const peers = [
    {
      name: 'yaml-language-server',
      command: [bin('yaml-language-server/bin/yaml-language-server'), '--stdio'],
      id: 'yaml',
      uri: 'file:///a.yaml',
      text: yamlOf,
      type: (t: string, i: number) => `${t}# ${'x'.repeat(i + 1)}\n`,
    },
    {
      name: 'vscode-json',
      command: [bin('vscode-langservers-extracted/bin/vscode-json-language-server'), '--stdio'],
      id: 'json',
      uri: 'file:///a.json',
      text: jsonOf,
      type: (t: string, i: number) => `${t}${' '.repeat(i + 1)}`,
    },
  ];
  console.log('\nOther servers on texts of the same size');
  for (const peer of peers)
    for (const [name, size] of [
      ['10 KB', 10_000],
      ['100 KB', 100_000],
    ] as const) {
      const { ready, p50, p95 } = await typing(peer.command, peer.uri, peer.id, peer.text(size), peer.type);
      console.log(
        `  ${peer.name.padEnd(22)} ${name.padEnd(7)} p50 ${ms(p50)}, p95 ${ms(p95)}; initialised ${ms(ready)}`,
      );
    }
}

console.log('\nBundles');
for (const path of [
  'language/out/cli.js',
  'language/out/server.js',
  'extension/out/server.js',
  'extension/out/node.js',
  'extension/out/browser.js',
  'extension/paintplan.vsix',
])
  if (existsSync(join(root, path)))
    console.log(`  ${path} ${Math.round(statSync(join(root, path)).size / 1024)} KB`);
const memory = process.memoryUsage();
console.log(`\nThis process holds ${Math.round(memory.heapUsed / 1e6)} MB of heap at the end.`);
