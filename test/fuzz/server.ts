/**
 * Random edits through the real server: it answers every version, its answer to a text reached by many small edits is
 * the answer to that text alone, formatting changes spacing only, and its memory does not grow.
 */
import { DidChangeTextDocumentNotification } from 'vscode-languageserver-protocol/node';
import { createAnalyser } from '../../language/src/analyse.ts';
import { linesOf } from '../../language/src/plan/lines.ts';
import { readPlan } from '../../language/src/plan/read.ts';
import { nodeHost } from '../../language/src/server/node-files.ts';
import { format } from '../../language/src/syntax/format.ts';
import { startServer } from '../server/client.ts';
import { PLACES } from '../syntax/said.ts';
import { edits, random } from './text.ts';

export interface Fuzzed {
  readonly edits: number;
  readonly compared: number;
  readonly formatted: number;
  /** MB of resident memory of the server after a tenth of the edits, and at the end; 0 where it cannot be read */
  readonly memory: readonly [early: number, late: number];
}

/** The smallest replacement that turns one text into another: what an editor would send. */
function change(before: string, after: string) {
  let start = 0;
  const most = Math.min(before.length, after.length);
  while (start < most && before[start] === after[start]) start++;
  let end = 0;
  while (end < most - start && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
  return { start, end: before.length - end, text: after.slice(start, after.length - end) };
}

/** A plan without its places: equal for texts that differ in spacing only. */
function meaning(text: string): string {
  const drop = new Set<string>([
    ...PLACES,
    'headPlace',
    'target',
    'words',
    'references',
    'problems',
    'visible',
    'circles',
    'clashes',
  ]);
  const seen = new WeakSet<object>();
  return JSON.stringify(readPlan(text, 'file:///a.paintplan'), (key, value) => {
    if (drop.has(key)) return undefined;
    if (typeof value === 'object' && value !== null) {
      if (seen.has(value)) return '…';
      seen.add(value);
    }
    return value;
  });
}

export function checkFormat(text: string): void {
  const once = format(text);
  if ('unchanged' in once) return;
  const twice = format(once.text);
  if (!('text' in twice) || twice.text !== once.text)
    throw new Error(`formatting twice differs from once:\n${text}`);
  const comments = (t: string) => t.match(/\/\/[^\n\r]*|\/\*/g)?.map((c) => c.trimEnd()).length ?? 0;
  if (comments(text) !== comments(once.text)) throw new Error(`a comment is lost or made:\n${text}`);
  if (readPlan(text, 'file:///a.paintplan').problems.length === 0 && meaning(text) !== meaning(once.text))
    throw new Error(`formatting changes the meaning:\n${text}`);
}

async function residentMb(pid: number | undefined): Promise<number> {
  if (pid === undefined) return 0;
  try {
    const { readFileSync } = await import('node:fs');
    return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;
  } catch {
    return 0;
  }
}

/** Runs until the count or the time is used up. Throws on the first fault, with the text that shows it. */
export async function fuzzServer(
  texts: readonly string[],
  seed: number,
  count: number,
  untilMs = Number.POSITIVE_INFINITY,
): Promise<Fuzzed> {
  const client = await startServer();
  const next = random(seed);
  const uri = 'file:///fuzz.paintplan';
  let text = texts[0] ?? '';
  let version = 1;
  let [done, compared, formatted, early] = [0, 0, 0, 0];
  client.open(uri, text);
  await client.diagnostics(uri);
  outer: while (done < count && Date.now() < untilMs) {
    const base = texts[Math.floor(next() * texts.length)] ?? '';
    for (const edited of edits(base, Math.floor(next() * 1e9), 40)) {
      if (done >= count || Date.now() >= untilMs) break outer;
      const c = change(text, edited);
      const lines = linesOf(text);
      const at = (o: number) => ({ line: lines.at(o).line, character: lines.at(o).column });
      version++;
      void client.connection.sendNotification(DidChangeTextDocumentNotification.type, {
        textDocument: { uri, version },
        contentChanges: [{ range: { start: at(c.start), end: at(c.end) }, text: c.text }],
      });
      text = edited;
      done++;
      if (done % 10 === 0) {
        const answer = await client.diagnostics(uri, version);
        const alone = createAnalyser()(text, uri, nodeHost([])).findings({ colour: false });
        const [got, wanted] = [
          answer.diagnostics.map((d) => `${d.code} ${d.message}`),
          alone.map((f) => `${f.rule} ${f.message}`),
        ];
        if (answer.version === version && JSON.stringify(got) !== JSON.stringify(wanted))
          throw new Error(
            `after edits the findings differ from those of the text alone:\n${text}\n--- server\n${got.join('\n')}\n--- alone\n${wanted.join('\n')}`,
          );
        compared++;
      }
      if (done % 25 === 0) {
        checkFormat(text);
        formatted++;
      }
      if (done === Math.min(1000, Math.floor(count / 10))) early = await residentMb(client.pid);
    }
  }
  const late = await residentMb(client.pid);
  const errors = client.errors();
  await client.stop();
  if (errors) throw new Error(`the server wrote on standard error:\n${errors}`);
  return { edits: done, compared, formatted, memory: [early, late] };
}
