/** What commands say on standard error: one line a thing, whatever the words hold. */
import { oneLine } from './paper.ts';

/** A usage fault, or something that cannot be read or written: the command ends with exit code 2. */
export class CannotRun extends Error {}

export const say = (words: string): void => console.error(oneLine(words));

/** Does one thing of several. Where it cannot be done, says why, so that the rest still is. */
export function tried(work: () => void): boolean {
  try {
    work();
    return true;
  } catch (error) {
    if (!(error instanceof CannotRun)) throw error;
    say(error.message);
    return false;
  }
}
