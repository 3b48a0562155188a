/** One declaration of a text with its parse, and what every declaration with a name shares. */
import type * as Ast from '../../generated/ast.ts';
import type { Parsed } from '../syntax/chunk.ts';
import type { Chunk } from '../syntax/scan.ts';
import { type At, at, nameUse } from './context.ts';
import type { Declared } from './plan.ts';
import type { Reader } from './scope.ts';

/** A chunk with its parse. */
export interface Statement {
  readonly chunk: Chunk;
  readonly parsed: Parsed;
}

/** What a text was cut into. */
export interface Cut {
  readonly text: string;
  readonly statements: readonly Statement[];
}

/** Where a statement's declaration stands. */
export const where = (reader: Reader, statement: Statement): At =>
  at(reader.context.uri, statement.chunk.start + (statement.parsed.declaration?.base ?? 0));

/** What every named declaration shares; undefined where even the name is missing. */
export function declared(reader: Reader, statement: Statement): Declared | undefined {
  const node = statement.parsed.declaration?.node as (Ast.Paint | undefined) & { called?: Ast.Named };
  const name = nameUse(node?.called, where(reader, statement));
  if (!name) return undefined;
  return {
    name: name.name,
    namePlace: name.place,
    place: { uri: reader.context.uri, start: statement.chunk.start, end: statement.chunk.end },
    ...(statement.chunk.description ? { description: statement.chunk.description } : {}),
  };
}
