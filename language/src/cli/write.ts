/** Writes files whole or not at all: a full disk, a lost connection or a sudden end leaves what was there. */
import {
  chmodSync,
  closeSync,
  constants,
  lstatSync,
  mkdirSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { refusal } from '../server/system.ts';
import { type Input, isFolder } from './input.ts';
import { CannotRun } from './say.ts';

const { O_WRONLY, O_CREAT, O_EXCL, O_SYNC } = constants;

function cannot(path: string, why: string): never {
  throw new CannotRun(`${path} cannot be written: ${why}.`);
}

/** New text beside the old, then in its place: a name has either the old text or the new. */
function replace(path: string, text: string, before: Stats | undefined): void {
  // a name of its own: one made from the file's could be longer than a name may be
  const beside = join(dirname(path), `.paintplan-${Math.random().toString(36).slice(2)}.new`);
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
    cannot(path, refusal(error));
  }
}

/** Writes a file whose name was made here: in a folder from elsewhere it could be a link that leads out. Throws CannotRun. */
export function writeMade(path: string, text: string): void {
  if (isLink(path)) cannot(path, 'it is a link; take it away, or name another place');
  writeWhole(path, text);
}

function isLink(path: string): boolean {
  try {
    return lstatSync(path).isSymbolicLink();
  } catch {
    return false;
  }
}

function make(folder: string): void {
  try {
    mkdirSync(folder);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT')
      throw new CannotRun(`${folder} is not made: there is no folder ${dirname(folder)}. Make that first.`);
    if (code !== 'EEXIST') cannot(folder, refusal(error));
    if (!isFolder(folder)) cannot(folder, 'it is no folder');
  }
}

/**
 * A folder as the user named it, and below it the one that the reports need. The first may be new, but not the folder
 * that it lies in: that is a slip of the pen. Throws CannotRun.
 */
export function makeFolder(named: string, below: string): string {
  if (!isFolder(named)) make(named);
  let at = named;
  for (const step of below.split(sep).filter((s) => s !== '' && s !== '.')) {
    at = join(at, step);
    if (isLink(at)) cannot(at, 'it is a link; take it away, or name another place');
    make(at);
  }
  return at;
}

/** Throws CannotRun where the text read is not all that the file holds: writing it back would lose the rest. */
export function mustHoldAll(input: Input, path: string): void {
  if (!readFileSync(path).equals(Buffer.from(input.text)))
    throw new CannotRun(`${input.path} is left as it is: it was changed just now. Try again.`);
}
