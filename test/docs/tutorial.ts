/** The tutorial, walked in a folder of its own. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Block, replay } from './replay.ts';

const root = new URL('../..', import.meta.url).pathname;
export const page = join(root, 'language', 'docs', 'tutorial.md');
/** The finished plan and what it uses, as the examples keep them. */
export const kept = ['plums.paintplan', 'palette.paintplan'].map((name) => ({
  name,
  path: join(root, 'examples', 'tutorial', name),
}));

export interface Walked {
  readonly page: string;
  readonly blocks: readonly Block[];
  readonly files: ReadonlyMap<string, string>;
}

export async function walk(): Promise<Walked> {
  const before = process.cwd();
  const folder = mkdtempSync(join(tmpdir(), 'tutorial-'));
  try {
    process.chdir(folder);
    const walked = await replay(readFileSync(page, 'utf8'));
    const files = new Map(kept.map(({ name }) => [name, readFileSync(join(folder, name), 'utf8')] as const));
    return { ...walked, files };
  } finally {
    process.chdir(before);
    rmSync(folder, { recursive: true, force: true });
  }
}
