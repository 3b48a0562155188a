/** One declaration of a text with its parse, and what every declaration with a name shares. */
import type * as Ast from '../../generated/ast.ts';
import type { Parsed } from '../syntax/chunk.ts';
import type { Chunk } from '../syntax/scan.ts';
import { type At, at, nameUse } from './context.ts';
import type { Declared } from './plan.ts';
import type { Reader } from './scope.ts';

/** A chunk with its parse. */
export interface Unit {
  readonly chunk: Chunk;
  readonly parsed: Parsed;
}

/** Where a unit's declaration stands. */
export const where = (reader: Reader, unit: Unit): At =>
  at(reader.context.uri, unit.chunk.start + (unit.parsed.declaration?.base ?? 0));

/** What every named declaration shares; undefined where even the name is missing. */
export function declared(reader: Reader, unit: Unit): Declared | undefined {
  const node = unit.parsed.declaration?.node as (Ast.Paint | undefined) & { called?: Ast.Named };
  const name = nameUse(node?.called, where(reader, unit));
  if (!name) return undefined;
  return {
    name: name.name,
    namePlace: name.place,
    place: { uri: reader.context.uri, start: unit.chunk.start, end: unit.chunk.end },
    ...(unit.chunk.description ? { description: unit.chunk.description } : {}),
  };
}
