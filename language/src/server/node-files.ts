/** `use` on a real disk: plan files inside the given folders and nowhere else, whatever links or dots a path holds. */
import {
  closeSync,
  constants,
  type Dirent,
  fstatSync,
  lstatSync,
  openSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  type Stats,
} from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { URI } from 'vscode-uri';
import { decoded } from '../plan/encoding.ts';
import { hasScheme, type PlanHost } from '../plan/host.ts';
import { FILE_ENDING } from '../plan/names.ts';
import { refusal } from './system.ts';

/** Bytes; a palette written by a person is a thousand times smaller. */
export const LARGEST = 2 * 1024 * 1024;

/** Links followed on the way to one file; more are a circle. */
const MOST_LINKS = 40;

/** A folder as it was named, and where it lies. */
interface Root {
  readonly named: string;
  readonly real: string;
}

function rootOf(path: string): Root {
  const named = resolve(path);
  try {
    return { named, real: realpathSync(named) };
  } catch {
    return { named, real: named };
  }
}

const within = (path: string, root: string): boolean => {
  const way = relative(root, path);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way));
};

/** A path's address, written as VS Code writes it, so that a file read here is known again when it is open there. */
export const fileUri = (path: string): string => URI.file(path).toString();

export function pathOf(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}

/**
 * The path with every link followed, as far as it exists; undefined as soon as a step would leave the folders. Walked
 * from the folder down, because even to ask whether something outside exists would be a look outside.
 */
function followed(path: string, roots: readonly Root[]): string | undefined {
  let asked = path;
  for (let links = 0; links < MOST_LINKS; links++) {
    const named = roots.flatMap((r) => [r.named, r.real].map((n) => ({ n, real: r.real })));
    const root = named.find(({ n }) => within(asked, n));
    if (!root) return undefined;
    const steps = relative(root.n, asked).split(sep).filter(Boolean);
    let at = root.real;
    let link: string | undefined;
    while (link === undefined && steps.length > 0) {
      at = join(at, steps.shift() as string);
      try {
        if (lstatSync(at).isSymbolicLink()) link = readlinkSync(at);
      } catch {
        return join(at, ...steps);
      }
    }
    if (link === undefined) return at;
    asked = resolve(dirname(at), link, ...steps);
  }
  return undefined;
}

/** A host that reads only regular files with our ending, of at most 2 MB, inside the folders `roots` (paths). */
export function nodeHost(roots: readonly string[]): PlanHost {
  const allowed = roots.map(rootOf);
  const inside = (path: string): string | undefined => {
    const target = followed(path, allowed);
    return target?.endsWith(FILE_ENDING) ? target : undefined;
  };
  return {
    resolve(path, from) {
      const base = pathOf(from);
      // a NUL ends a path for the operating system; a path of another machine or scheme is none of ours
      if (base === undefined || path.includes('\0') || isAbsolute(path) || hasScheme(path))
        return { outside: true };
      const folder = dirname(followed(base, allowed) ?? base);
      const target = inside(resolve(folder, path.replaceAll('\\', '/')));
      return target === undefined ? { outside: true } : { uri: fileUri(target) };
    },
    read(uri) {
      const named = pathOf(uri);
      const path = named === undefined ? undefined : inside(named);
      if (path === undefined) return { failed: 'unreadable', detail: 'it lies outside the workspace' };
      let file: number | undefined;
      try {
        // opened before it is looked at, so that nothing can be put in its place; a pipe must not keep us waiting
        const { O_RDONLY, O_NONBLOCK, O_NOFOLLOW } = constants;
        file = openSync(path, O_RDONLY | (O_NONBLOCK ?? 0) | (O_NOFOLLOW ?? 0));
        const stats: Stats = fstatSync(file);
        if (stats.isDirectory()) return { failed: 'unreadable', detail: 'it is a folder' };
        if (!stats.isFile()) return { failed: 'unreadable', detail: 'it is no regular file' };
        if (stats.size > LARGEST)
          return {
            failed: 'too-large',
            detail: `${(stats.size / 1024 / 1024).toFixed(1)} MB; at most 2 MB are read`,
          };
        const bytes = decoded(readFileSync(file));
        return 'text' in bytes ? bytes : { failed: 'unreadable', detail: `it ${bytes.not}` };
      } catch (error) {
        const code = (error as NodeJS.ErrnoException).code;
        if (code === 'ENOENT' || code === 'ENOTDIR') return { failed: 'missing' };
        return { failed: 'unreadable', detail: refusal(error) };
      } finally {
        if (file !== undefined) closeSync(file);
      }
    },
  };
}

/** Folders looked into at most: a workspace may hold a whole disk. */
const MOST_FOLDERS = 5000;

/** Plans below the folders, as uris; at most so many. Links are not followed, hidden folders and node_modules left out. */
export function plansBelow(roots: readonly string[], most = 500): string[] {
  const paths: string[] = [];
  const waiting = [...roots];
  for (let n = 0; n < MOST_FOLDERS && n < waiting.length && paths.length < most; n++) {
    const folder = waiting[n] as string;
    let entries: Dirent[];
    try {
      entries = readdirSync(folder, { withFileTypes: true });
    } catch {
      continue;
    }
    for (const entry of entries) {
      const path = join(folder, entry.name);
      if (entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules')
        waiting.push(path);
      else if (entry.isFile() && entry.name.endsWith(FILE_ENDING) && paths.length < most)
        paths.push(fileUri(path));
    }
  }
  return paths;
}
