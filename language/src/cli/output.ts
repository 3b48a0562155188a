/** Standard output and error as Node has them: a write that fails is told later, as an event, and unheard ends in a stack trace. */
import { refusal } from '../server/system.ts';
import { say } from './say.ts';

let lost: NodeJS.ErrnoException | undefined;
let heeded = false;

/** To be called before anything is written. */
export function heedOutput(): void {
  if (heeded) return;
  heeded = true;
  process.stdout.on('error', (error) => {
    lost ??= error;
  });
  // there is nowhere left to say it
  process.stderr.on('error', () => {});
}

/** The exit code of a command once all it wrote is out. A reader that has gone away wanted no more: that is no fault. */
export async function written(code: number): Promise<number> {
  if (process.stdout.writableLength > 0) await new Promise((done) => process.stdout.write('', done));
  await new Promise(setImmediate);
  if (lost === undefined || lost.code === 'EPIPE') return code;
  say(`Standard output cannot be written: ${refusal(lost)}.`);
  return 2;
}
