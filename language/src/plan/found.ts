/** What the readers of one file share, and the way they walk its declarations. */
import { at, type Context } from './context.ts';
import type { Place } from './plan.ts';
import type { Reader } from './scope.ts';
import type { Unit } from './unit.ts';

export interface Found {
  readonly context: Context;
  readonly reader: Reader;
  readonly units: readonly Unit[];
  readonly record: boolean;
}

export const each = <T>(found: Found, word: string, read: (node: T, unit: Unit) => void): void => {
  for (const unit of found.units)
    if (unit.chunk.word === word && unit.parsed.declaration)
      read(unit.parsed.declaration.node as unknown as T, unit);
};

export const here = (found: Found, unit: Unit) =>
  at(found.context.uri, unit.chunk.start + (unit.parsed.declaration?.base ?? 0));
export const whole = (found: Found, unit: Unit): Place => ({
  uri: found.context.uri,
  start: unit.chunk.start,
  end: unit.chunk.end,
});
