/** What the parser’s look-ahead asks of lodash-es, under its names: it hands over arrays, or nothing. */

type List<T> = readonly T[] | undefined;

export const map = <T, U>(list: List<T>, to: (value: T, index: number) => U): U[] => (list ?? []).map(to);
export const filter = <T>(list: List<T>, keep: (value: T) => boolean): T[] => (list ?? []).filter(keep);
export const flatMap = <T, U>(list: List<T>, to: (value: T) => U | U[]): U[] => (list ?? []).flatMap(to);
export const flatten = <T>(list: List<T | T[]>): T[] => (list ?? []).flat() as T[];
export const forEach = <T>(list: List<T>, act: (value: T) => void): void => list?.forEach(act);
export const isEmpty = (list: List<unknown>): boolean => !list?.length;
export const min = (list: List<number>): number | undefined => (list?.length ? Math.min(...list) : undefined);
export const reduce = <T, U>(list: List<T>, join: (sum: U, value: T, index: number) => U, start: U): U =>
  (list ?? []).reduce(join, start);
export const uniqBy = <T>(list: List<T>, by: (value: T) => unknown): T[] => {
  const seen = new Set<unknown>();
  return (list ?? []).filter((v) => !seen.has(by(v)) && seen.add(by(v)));
};
