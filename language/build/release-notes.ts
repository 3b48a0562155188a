/**
 * What the changelog says of a version, for the page of its release: `node language/build/release-notes.ts v1.2.3`.
 * Fails where the changelog has nothing on it, or where the tag is not the version that the manifests name.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The text below `## VERSION`, up to the next heading of that rank; undefined where there is none or it is empty. */
export function sectionOf(changelog: string, version: string): string | undefined {
  const lines = changelog.split(/\r?\n/);
  const first = lines.findIndex((l) => l === `## ${version}` || l.startsWith(`## ${version} `));
  if (first < 0) return undefined;
  const length = lines.slice(first + 1).findIndex((l) => l.startsWith('## '));
  const text = lines
    .slice(first + 1, length < 0 ? undefined : first + 1 + length)
    .join('\n')
    .trim();
  return text === '' ? undefined : text;
}

/** The notes of a tag, or what does not agree. Paths of `versions` name the manifests. */
export function releaseNotes(
  tag: string,
  versions: Readonly<Record<string, string>>,
  changelog: string,
): { readonly notes: string } | { readonly faults: readonly string[] } {
  const version = tag.replace(/^v/, '');
  const notes = sectionOf(changelog, version);
  const faults = Object.entries(versions)
    .filter(([, v]) => v !== version)
    .map(([path, v]) => `${path} says ${v}, the tag says ${version}.`);
  if (notes === undefined) faults.push(`language/CHANGELOG.md says nothing below ‘## ${version}’.`);
  return notes === undefined || faults.length > 0 ? { faults } : { notes };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
  const manifests = ['package.json', 'language/package.json', 'extension/package.json'];
  const versions = Object.fromEntries(manifests.map((m) => [m, JSON.parse(read(m)).version as string]));
  const [tag] = process.argv.slice(2);
  const result = tag
    ? releaseNotes(tag, versions, read('language/CHANGELOG.md'))
    : { faults: ['Usage: node language/build/release-notes.ts v1.2.3'] };
  if ('notes' in result) console.log(result.notes);
  else {
    console.error(result.faults.join('\n'));
    process.exitCode = 1;
  }
}
