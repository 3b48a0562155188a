/**
 * The number of the data. Run it after a table changed:
 *
 *     node language/build/data-version.ts "what changed"       the next number
 *     node language/build/data-version.ts --unreleased         the same number, where no release has carried it yet
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { DataRecord } from '../src/materials/version.ts';

const SOURCE = new URL('../src/', import.meta.url);
const RECORD = new URL('materials/tables/version.json', SOURCE);
const FOLDERS = ['materials/tables/', 'optics/tables/'];

/** What a table says, whatever its spacing and its comments. */
async function figures(path: string): Promise<string> {
  const url = new URL(path, SOURCE);
  if (path.endsWith('.json')) return JSON.stringify(JSON.parse(readFileSync(url, 'utf8')));
  // names sorted: loaders differ in the order they hand them out
  return JSON.stringify(Object.entries(await import(url.href)).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Hashes of the tables as they are now, by path. */
export async function tableHashes(): Promise<Record<string, string>> {
  const paths = FOLDERS.flatMap((folder) =>
    readdirSync(new URL(folder, SOURCE))
      .filter((name) => /\.(json|ts)$/.test(name) && name !== 'version.json')
      .map((name) => folder + name),
  ).sort();
  const hash = async (path: string) =>
    [
      path,
      createHash('sha256')
        .update(await figures(path))
        .digest('hex')
        .slice(0, 16),
    ] as const;
  return Object.fromEntries(await Promise.all(paths.map(hash)));
}

export const readRecord = (): DataRecord => JSON.parse(readFileSync(RECORD, 'utf8'));

/** Tables that changed, came or went since the number was given. */
export function changedTables(
  now: Readonly<Record<string, string>>,
  then: Readonly<Record<string, string>>,
): string[] {
  return [...new Set([...Object.keys(now), ...Object.keys(then)])].filter((path) => now[path] !== then[path]);
}

/** The number after `version`: that of the month, or one more within it. `day` is ISO. */
export function nextVersion(version: string, day: string): string {
  const month = `${Number(day.slice(0, 4))}.${Number(day.slice(5, 7))}`;
  const [year, of, count = 0] = version.split('.').map(Number);
  return `${year}.${of}` === month ? `${month}.${count + 1}` : month;
}

async function main(words: readonly string[]): Promise<number> {
  const record = readRecord();
  const tables = await tableHashes();
  const changed = changedTables(tables, record.tables);
  if (changed.length === 0) {
    console.log(`The figures are those of ${record.version}.`);
    return 0;
  }
  const date = new Date().toISOString().slice(0, 10);
  const same = words.includes('--unreleased');
  const what = words.filter((w) => !w.startsWith('--')).join(' ') || `Changed: ${changed.join(', ')}.`;
  const version = same ? record.version : nextVersion(record.version, date);
  const [newest, ...older] = record.changes;
  const changes =
    same && newest ? [{ ...newest, date }, ...older] : [{ version, date, what }, ...record.changes];
  const next: DataRecord = { ...record, version, date, changes, tables };
  writeFileSync(RECORD, `${JSON.stringify(next, null, 2)}\n`);
  console.log(`${version}: ${changed.join(', ')}`);
  return 0;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  process.exitCode = await main(process.argv.slice(2));
