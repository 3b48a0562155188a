/** `use` on a real disk: plan files inside the given folders and nowhere else, whatever links or dots a path holds. */
import {
  closeSync,
  constants,
  type Dirent,
  fstatSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  type Stats,
} from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { PlanHost } from '../plan/host.ts';
import { FILE_ENDING } from '../plan/names.ts';

/** Bytes; a palette written by a person is a thousand times smaller. */
export const LARGEST = 2 * 1024 * 1024;

/** The path with every link followed; where its end does not exist, as far as it does. */
function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    const above = dirname(path);
    return above === path ? path : resolve(real(above), relative(above, path));
  }
}

const within = (path: string, root: string): boolean => {
  const way = relative(root, path);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way));
};

function pathOf(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}

/** A host that reads only regular files with our ending, of at most 2 MB, inside the folders `roots` (paths). */
export function nodeHost(roots: readonly string[]): PlanHost {
  const allowed = roots.map((root) => real(resolve(root)));
  const inside = (path: string) => path.endsWith(FILE_ENDING) && allowed.some((root) => within(path, root));
  return {
    resolve(path, from) {
      const base = pathOf(from);
      // a NUL ends a path for the operating system; a path of another machine or scheme is none of ours
      if (base === undefined || path.includes('\0') || isAbsolute(path) || /^[a-z][a-z\d+.-]*:/i.test(path))
        return { outside: true };
      const target = real(resolve(dirname(real(base)), path.replaceAll('\\', '/')));
      return inside(target) ? { uri: pathToFileURL(target).href } : { outside: true };
    },
    read(uri) {
      const named = pathOf(uri);
      const path = named === undefined ? undefined : real(named);
      if (path === undefined || !inside(path))
        return { failed: 'unreadable', detail: 'it lies outside the workspace' };
      let file: number | undefined;
      try {
        // opened before it is looked at, so that nothing can be put in its place; a pipe must not keep us waiting
        file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
        const stats: Stats = fstatSync(file);
        if (stats.isDirectory()) return { failed: 'unreadable', detail: 'it is a folder' };
        if (!stats.isFile()) return { failed: 'unreadable', detail: 'it is no regular file' };
        if (stats.size > LARGEST)
          return {
            failed: 'too-large',
            detail: `${(stats.size / 1024 / 1024).toFixed(1)} MB; at most 2 MB are read`,
          };
        return { text: readFileSync(file, 'utf8') };
      } catch (error) {
        const code = (error as NodeJS.ErrnoException).code;
        if (code === 'ENOENT' || code === 'ENOTDIR') return { failed: 'missing' };
        return {
          failed: 'unreadable',
          detail: code === 'EACCES' ? 'its permissions forbid reading it' : `the system says ${code ?? 'no'}`,
        };
      } finally {
        if (file !== undefined) closeSync(file);
      }
    },
  };
}

/** Plans below the folders, as uris; at most so many, hidden folders and node_modules left out. */
export function plansBelow(roots: readonly string[], most = 500): string[] {
  const found: string[] = [];
  const waiting = [...roots];
  for (let folder = waiting.shift(); folder !== undefined && found.length < most; folder = waiting.shift()) {
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
      else if (entry.isFile() && entry.name.endsWith(FILE_ENDING) && found.length < most)
        found.push(pathToFileURL(path).href);
    }
  }
  return found;
}
