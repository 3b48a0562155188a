import { explain } from '../explained.ts';
import { CannotRun } from '../input.ts';
import { wrap } from '../paper.ts';

export function explainCommand(words: string): number {
  const found = explain(words);
  if ('near' in found) {
    const near = found.near.length > 0 ? ` Did you mean ${found.near.join(', ')}?` : '';
    throw new CannotRun(`‘${words}’ is no rule, pigment or material I know.${near}`);
  }
  process.stdout.write(
    `${found.text
      .split('\n')
      .map((line) => wrap(line.trimStart(), line.length - line.trimStart().length))
      .join('\n')}\n`,
  );
  return 0;
}
