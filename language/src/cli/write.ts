/** Writes files whole or not at all: a full disk, a lost connection or a sudden end leaves what was there. */
import {
  chmodSync,
  closeSync,
  constants,
  lstatSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { CannotRun, type Input } from './input.ts';

const { O_WRONLY, O_CREAT, O_EXCL, O_SYNC } = constants;

function cannot(path: string, why: string): never {
  throw new CannotRun(`${path} cannot be written (${why}).`);
}

/** New text beside the old, then in its place: a name has either the old text or the new. */
function replace(path: string, text: string, before: Stats | undefined): void {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.new`);
  try {
    // O_SYNC: the new text is on the disk before it takes the name
    const flags = O_WRONLY | O_CREAT | O_EXCL | (O_SYNC ?? 0);
    const file = openSync(beside, flags, before ? before.mode & 0o777 : 0o666);
    try {
      if (before) chmodSync(beside, before.mode & 0o777);
      writeFileSync(file, text);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

/**
 * Writes a file the user named; a link is followed. A file marked read-only stays as it is, and what is no regular file
 * (a pipe, a device) is written to directly. Throws CannotRun.
 */
export function writeWhole(path: string, text: string): void {
  try {
    const before = statSync(path, { throwIfNoEntry: false });
    if (before && (before.mode & 0o222) === 0) cannot(path, 'it is read-only');
    if (before && !before.isFile()) writeFileSync(path, text);
    else replace(before ? realpathSync(path) : path, text, before);
  } catch (error) {
    if (error instanceof CannotRun) throw error;
    cannot(path, String((error as NodeJS.ErrnoException).code ?? error));
  }
}

/** Writes a file whose name was made here: in a folder from elsewhere it could be a link that leads out. Throws CannotRun. */
export function writeMade(path: string, text: string): void {
  if (lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink())
    cannot(path, 'it is a link; take it away, or name another place');
  writeWhole(path, text);
}

/** Throws CannotRun where the text read is not all that the file holds: writing it back would lose the rest. */
export function mustHoldAll(input: Input, path: string): void {
  if (!readFileSync(path).equals(Buffer.from(input.text)))
    throw new CannotRun(
      `${input.path} is left as it is: it is not UTF-8 text, or was changed just now. Save it as UTF-8 and try again.`,
    );
}
