/** What `material NAME` may name: grounds, sizes, leaf, drawing materials, water-bound paints, deposits. */
import { figure, type RawFigure, source } from './sources.ts';
import table from './tables/grounds.json' with { type: 'json' };
import type { GroundMaterial } from './types.ts';

type Raw = Omit<GroundMaterial, 'ready' | 'film' | 'source'> & {
  readonly ready: readonly [number, number, number, string];
  readonly film: RawFigure;
  readonly source: string;
};

export const grounds: readonly GroundMaterial[] = (table as unknown as readonly Raw[]).map((raw) => {
  const [least, usual, best, from] = raw.ready;
  return {
    ...raw,
    ready: { least, usual, best, source: source(from) },
    film: figure(raw.film),
    source: source(raw.source),
  };
});
