/** What the readers of one file share, and the way they walk its declarations. */
import { at, type Context } from './context.ts';
import type { Place } from './plan.ts';
import type { Reader } from './scope.ts';
import type { Statement } from './statement.ts';

export interface Reading {
  readonly context: Context;
  readonly reader: Reader;
  readonly statements: readonly Statement[];
  readonly record: boolean;
}

export const each = <T>(
  reading: Reading,
  word: string,
  read: (node: T, statement: Statement) => void,
): void => {
  for (const statement of reading.statements)
    if (statement.chunk.word === word && statement.parsed.declaration)
      read(statement.parsed.declaration.node as unknown as T, statement);
};

export const here = (reading: Reading, statement: Statement) =>
  at(reading.context.uri, statement.chunk.start + (statement.parsed.declaration?.base ?? 0));
export const whole = (reading: Reading, statement: Statement): Place => ({
  uri: reading.context.uri,
  start: statement.chunk.start,
  end: statement.chunk.end,
});
