/** Files named by `use`, on a disk: only plans, only below the given folders, links followed before that is judged. */
import { readFileSync, realpathSync, statSync } from 'node:fs';
import { dirname, isAbsolute, relative, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { PlanHost } from '../plan/host.ts';
import { FILE_ENDING } from '../plan/names.ts';

const MOST_BYTES = 2 * 1024 * 1024;

const real = (path: string): string => {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
};

const below = (folder: string, path: string): boolean => {
  const way = relative(folder, path);
  return way === '' || (!way.startsWith('..') && !isAbsolute(way));
};

/** A host for these folders (paths). Nothing outside them is read, whatever a path or a link says. */
export function nodeHost(roots: readonly string[]): PlanHost {
  const folders = roots.map(real);
  return {
    resolve(path, from) {
      let target: string;
      try {
        target = resolve(dirname(fileURLToPath(from)), path);
      } catch {
        return { uri: path };
      }
      if (target.includes('\0')) return { uri: path };
      // the folder of a file that does not exist (yet) still tells on which side it lies
      const found = real(target);
      const judged =
        found === resolve(target)
          ? resolve(real(dirname(target)), target.slice(dirname(target).length + 1))
          : found;
      return folders.some((f) => below(f, judged)) ? { uri: pathToFileURL(target).href } : { outside: true };
    },
    read(uri) {
      try {
        const path = fileURLToPath(uri);
        const stat = statSync(path);
        if (!stat.isFile()) return { failed: 'unreadable', detail: 'it is no regular file' };
        if (!path.endsWith(FILE_ENDING))
          return { failed: 'unreadable', detail: `its name does not end in ${FILE_ENDING}` };
        if (stat.size > MOST_BYTES)
          return { failed: 'too-large', detail: `${Math.round(stat.size / 1e6)} MB, at most 2` };
        if (!folders.some((f) => below(f, real(path))))
          return { failed: 'unreadable', detail: 'it lies outside the opened folder' };
        return { text: readFileSync(path, 'utf8') };
      } catch (error) {
        const code = (error as NodeJS.ErrnoException).code;
        return code === 'ENOENT' || code === 'ENOTDIR'
          ? { failed: 'missing' }
          : { failed: 'unreadable', detail: String(code ?? 'unknown') };
      }
    },
  };
}
