/** Progress of long work, on standard error and only on a terminal. */
import { oneLine } from './paper.ts';

export function progress(verb: string, total: number): { next(what: string): void; done(): void } {
  const show = process.stderr.isTTY === true && total > 3;
  let count = 0;
  return {
    next(what) {
      count++;
      if (show) process.stderr.write(`\r\u001b[K${verb} ${count} of ${total}: ${oneLine(what)}`);
    },
    done() {
      if (show) process.stderr.write('\r\u001b[K');
    },
  };
}
