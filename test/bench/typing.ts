/**
 * Typing speed: in one process beside bare Langium on the same text, and over the real protocol beside two other
 * language servers on texts of the same size, in one run.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAnalyser } from '../../language/src/analyse.ts';
import { parse } from '../../language/src/syntax/parser.ts';
import { startServer } from '../server/client.ts';
import { ms, quantile, type Table, times, worked } from './table.ts';
import { jsonOf, layersOf, planOf, yamlOf } from './texts.ts';

const ROUNDS = 30;
const TURNS = 40;
const SIZES = [
  ['10 KB', 10_000],
  ['100 KB', 100_000],
  ['1 MB', 1_000_000],
] as const;

interface Typed {
  readonly ready: number;
  readonly p50: number;
  readonly p95: number;
}

/** One character typed, again and again; until the diagnostics of that version arrive. */
async function typing(
  command: readonly string[],
  uri: string,
  languageId: string,
  text: string,
  type: (text: string, i: number) => string,
): Promise<Typed> {
  const started = performance.now();
  const client = await startServer({ rootUri: null, workspaceFolders: null }, command);
  const ready = performance.now() - started;
  client.open(uri, text, languageId);
  await client.diagnostics(uri);
  const taken: number[] = [];
  for (let i = 0; i < ROUNDS; i++) {
    const next = type(text, i);
    const start = performance.now();
    client.change(uri, i + 2, next);
    await client.diagnosticsAfter(uri, i + 2);
    taken.push(performance.now() - start);
    // a person does not type while the colours are computed
    await new Promise((r) => setTimeout(r, 20));
  }
  await client.stop();
  return { ready, p50: quantile(taken, 0.5), p95: quantile(taken, 0.95) };
}

const inMiddle = (text: string, i: number): string => {
  const at = text.indexOf('\n', text.length / 2) + 1;
  return `${text.slice(0, at)}// ${'x'.repeat(i + 1)}\n${text.slice(at)}`;
};

/** Another figure in the film of the layer in the middle, longer or shorter by a digit each time. */
const inALayer = (text: string, i: number): string => {
  const at = text.indexOf('film ', text.length / 2) + 'film '.length;
  return `${text.slice(0, at)}${i % 2 === 0 ? 10 + (i % 30) : 9}${text.slice(at).replace(/^\d+/, '')}`;
};

export function inOneProcess(): Table {
  const uri = 'file:///a.paintplan';
  return {
    title: 'After a keystroke, in one process',
    how: 'Plan, study and every rule that needs no colour, beside bare Langium parsing the whole of the same text, by turns; time of the processor, p50. The ratio is of a figure typed in a layer in the middle, which moves all below it.',
    head: [
      'layers',
      'ratio to bare',
      'a figure typed in a layer',
      'a comment typed',
      'bare parse',
      'cold',
      'cold, with colours',
    ],
    rows: [10, 100, 1000].map((count) => {
      const text = layersOf(count);
      const cold = worked(() => createAnalyser()(text, uri).findings({ colour: false }));
      const coloured = worked(() => createAnalyser()(text, uri).findings());
      const analyse = createAnalyser();
      const type = (how: typeof inMiddle, i: number) =>
        worked(() => analyse(how(text, i), uri).findings({ colour: false }));
      const turns = Array.from({ length: TURNS }, (_, i) => ({
        comment: type(inMiddle, i),
        warm: type(inALayer, i),
        bare: worked(() => parse(`${text}// ${i}\n`, 'Model')),
      }));
      const [bare, warm, comment] = (['bare', 'warm', 'comment'] as const).map((of) =>
        quantile(
          turns.map((t) => t[of]),
          0.5,
        ),
      ) as [number, number, number];
      return [
        count.toLocaleString('en'),
        times(warm / bare),
        ms(warm),
        ms(comment),
        ms(bare),
        ms(cold),
        ms(coloured),
      ];
    }),
  };
}

interface Peer {
  readonly name: string;
  readonly command: readonly string[];
  readonly id: string;
  readonly uri: string;
  readonly text: (bytes: number) => string;
  readonly type: (text: string, i: number) => string;
}

/** Two servers from the registry, installed into `folder`. */
function peersIn(folder: string): Peer[] {
  const packages = ['yaml-language-server', 'vscode-langservers-extracted'];
  execFileSync('npm', ['install', '--no-audit', '--no-fund', '--silent', '--prefix', folder, ...packages], {
    stdio: 'inherit',
  });
  const bin = (name: string) => join(folder, 'node_modules', name);
  return [
    {
      name: 'yaml-language-server',
      command: [bin('yaml-language-server/bin/yaml-language-server'), '--stdio'],
      id: 'yaml',
      uri: 'file:///a.yaml',
      text: yamlOf,
      type: (t, i) => `${t}# ${'x'.repeat(i + 1)}\n`,
    },
    {
      name: 'vscode-json',
      command: [bin('vscode-langservers-extracted/bin/vscode-json-language-server'), '--stdio'],
      id: 'json',
      uri: 'file:///a.json',
      text: jsonOf,
      type: (t, i) => `${t}${' '.repeat(i + 1)}`,
    },
  ];
}

const OWN: Peer = {
  name: 'paintplan',
  command: [fileURLToPath(new URL('../../language/out/server.js', import.meta.url)), '--stdio'],
  id: 'paintplan',
  uri: 'file:///a.paintplan',
  text: planOf,
  type: inMiddle,
};

/** Keystroke to diagnostics over standard input and output. */
export async function overTheProtocol(withPeers: boolean): Promise<Table> {
  const folder = withPeers ? mkdtempSync(join(tmpdir(), 'paintplan-peers-')) : undefined;
  const rows: string[][] = [];
  const own = new Map<string, Typed>();
  try {
    for (const peer of [OWN, ...(folder ? peersIn(folder) : [])])
      for (const [size, bytes] of SIZES) {
        if (peer !== OWN && bytes > 100_000) continue;
        const typed = await typing(peer.command, peer.uri, peer.id, peer.text(bytes), peer.type);
        if (peer === OWN) own.set(size, typed);
        const ratio = times(typed.p50 / (own.get(size) as Typed).p50);
        rows.push([peer.name, size, ratio, ms(typed.p50), ms(typed.p95), ms(typed.ready)]);
      }
  } finally {
    if (folder) rmSync(folder, { recursive: true, force: true });
  }
  return {
    title: 'Keystroke to findings, over the protocol',
    how: `${ROUNDS} keystrokes each over standard input and output, until the diagnostics of that version are there. Ours wait 12 ms for the next key. The others check texts of their own language and of the same size.`,
    head: ['server', 'text', 'ratio to ours', 'p50', 'p95', 'initialised'],
    rows,
  };
}
