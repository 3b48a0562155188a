/** Light dose to a just noticeable fade, by blue wool class, and how lightfastness classes compare with it. */
import { source } from './sources.ts';
import table from './tables/blue-wool.json' with { type: 'json' };
import type { Lightfastness, Source } from './types.ts';

export interface BlueWool {
  readonly blueWool: number;
  /** Mlx·h, light with its ultraviolet */
  readonly withUv: number;
  /** Mlx·h, ultraviolet filtered out */
  readonly withoutUv: number;
  readonly source: Source;
}

const raw = table as unknown as {
  readonly source: string;
  readonly rows: readonly (readonly [number, number, number, string])[];
};

export const blueWools: readonly BlueWool[] = raw.rows.map(([blueWool, withUv, withoutUv]) => ({
  blueWool,
  withUv,
  withoutUv,
  source: source(raw.source),
}));

/** Blue wool classes a lightfastness class is taken to span. */
export const blueWoolOf: Readonly<Record<Lightfastness, readonly [low: number, high: number]>> = {
  I: [7, 8],
  II: [6, 6],
  III: [4, 5],
  IV: [2, 3],
  V: [1, 1],
};

export const blueWoolSource: Source = {
  text: 'trade mapping of ASTM D4302 classes to blue wool; a conservation institute’s sheet puts class I with 7, 8 and above',
  mark: 'common practice',
};
