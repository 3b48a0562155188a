/** Writes language/src/rules/index.ts from the files of the rules: `node language/build/rules-index.ts`. */
import { readdirSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { themes } from '../src/rules/themes.ts';

const folder = new URL('../src/rules/', import.meta.url);

/** `lean-over-fat` is exported as `leanOverFat`. */
const exported = (id: string): string => id.replace(/-(.)/g, (_, c: string) => c.toUpperCase());

/** The index: a rule is every file in the folder of a theme. */
export function rulesIndex(): string {
  const found = Object.keys(themes).flatMap((theme) =>
    readdirSync(new URL(theme, folder))
      .filter((f) => f.endsWith('.ts'))
      .map((file) => ({ id: file.slice(0, -'.ts'.length), path: `./${theme}/${file}` })),
  );
  const byPath = found.toSorted((a, b) => (a.path < b.path ? -1 : 1));
  const byId = found.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  return `/** Every rule, in order of its id. Written by language/build/rules-index.ts from the folders; run it after adding one. */
${byPath.map(({ id, path }) => `import { ${exported(id)} } from '${path}';\n`).join('')}import type { Rule } from './rule.ts';

/** Every rule, with its words, its sources and its check. */
export const rules: readonly Rule[] = [
${byId.map(({ id }) => `  ${exported(id)},\n`).join('')}];
`;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  writeFileSync(new URL('index.ts', folder), rulesIndex());
