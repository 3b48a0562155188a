import { explain } from '../explained.ts';
import { wrap } from '../paper.ts';
import { CannotRun } from '../say.ts';

export function explainCommand(words: string): number {
  const explained = explain(words);
  if ('near' in explained) {
    const near = explained.near.length > 0 ? ` Did you mean ${explained.near.join(', ')}?` : '';
    throw new CannotRun(`‘${words}’ is no rule, pigment or material I know.${near}`);
  }
  process.stdout.write(
    `${explained.text
      .split('\n')
      .map((line) => wrap(line.trimStart(), line.length - line.trimStart().length))
      .join('\n')}\n`,
  );
  return 0;
}
