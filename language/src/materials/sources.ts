/** Where the tables' figures come from, by the ids the tables use: a few words that say which source it is. */

import table from './tables/sources.json' with { type: 'json' };
import type { Figure, Mark, Source, Statement } from './types.ts';

const sources = new Map<string, Source>(
  Object.entries(table as unknown as Record<string, [string, Mark]>).map(([id, [text, mark]]) => [
    id,
    { text, mark },
  ]),
);

export type RawFigure = readonly [low: number, high: number, source: string];
export type RawStatement = readonly [value: string, source: string];

/** Throws on an id the table lacks: a fault of the tables, found when they are tested. */
export function source(id: string): Source {
  const known = sources.get(id);
  if (!known) throw new Error(`no source ${id}`);
  return known;
}

export const figure = ([low, high, id]: RawFigure): Figure => ({ low, high, source: source(id) });
export const statement = <T extends string = string>([value, id]: RawStatement): Statement<T> => ({
  value: value as T,
  source: source(id),
});
export const figureIf = (raw: RawFigure | undefined): Figure | undefined => raw && figure(raw);
export const statementIf = <T extends string = string>(
  raw: RawStatement | undefined,
): Statement<T> | undefined => raw && statement<T>(raw);

export const assumption = (text: string): Source => ({ text, mark: 'assumption' });
export const commonPractice = (text: string): Source => ({ text, mark: 'common practice' });
