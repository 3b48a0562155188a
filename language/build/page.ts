/** Pages written by hand with parts filled from the tables and the code: what the page builders share. */
import { readFileSync, writeFileSync } from 'node:fs';

const cell = (text: string | number): string => String(text).replaceAll('|', '\\|');

/** A Markdown table. */
export const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((r) => `| ${r.map(cell).join(' | ')} |`).join('\n');

export const code = (text: string): string => `\`${text}\``;

/** The page with every part between its markers written anew. Throws on a marker that no part has. */
export function fill(page: string, parts: Readonly<Record<string, () => string>>): string {
  return page.replace(/<!-- (\S+) -->\n[\s\S]*?<!-- end -->/g, (_, name: string) => {
    const make = parts[name];
    if (!make) throw new Error(`No part of a page is called ${name}.`);
    return `<!-- ${name} -->\n${make()}\n<!-- end -->`;
  });
}

/** Writes a page anew where it stands. */
export const refill = (page: URL, filled: (text: string) => string): void =>
  writeFileSync(page, filled(readFileSync(page, 'utf8')));
