/** Standard input, read to its end before anything is done. */
import { readSync } from 'node:fs';
import { refusal } from '../server/system.ts';
import { CannotRun } from './say.ts';

/** Bytes, of a file or of standard input. */
export const MOST_BYTES = 16 * 1024 * 1024;
const AT_ONCE = 64 * 1024;
/** Milliseconds between two looks at a pipe that has nothing yet. */
const PAUSE = 20;

/** Bytes into `chunk`; 0 at the end. A pipe that was left non-blocking says EAGAIN until somebody writes. */
function next(chunk: Uint8Array): number {
  for (;;)
    try {
      return readSync(0, chunk);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      // Windows says so where a pipe ends
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw new CannotRun(`Standard input cannot be read: ${refusal(error)}.`);
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
    }
}

/** Throws CannotRun where it cannot be read, or holds more than a plan may. */
export function standardInput(): Uint8Array {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const chunk = new Uint8Array(AT_ONCE);
    const length = next(chunk);
    if (length === 0) return Buffer.concat(chunks);
    size += length;
    if (size > MOST_BYTES) throw new CannotRun('Standard input holds over 16 MB; more is not read.');
    chunks.push(chunk.subarray(0, length));
  }
}
