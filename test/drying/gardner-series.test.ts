/**
 * Mass gain of linseed films, Gardner, Paint Technology and Tests (1911), tables I, VIII and XV. A film is taken to pass
 * touch-dry between half and nine tenths of its highest gain (our reading; the tables do not say when it was dry). Their
 * films were not measured, so the estimate is made over 15 to 60 µm.
 */
import { describe, expect, it } from 'vitest';
import { dry } from '../../language/src/drying/dry.ts';
import { binder } from '../../language/src/materials/catalogue.ts';
import { exactly } from '../../language/src/materials/interval.ts';

type Series = readonly (readonly [day: number, percent: number])[];
const sabin: Series = [
  [1, 0.26],
  [2, 0.51],
  [3, 0.11],
  [4, 2.35],
  [5, 9.14],
  [7, 14.48],
  [8, 14.48],
  [9, 14.18],
  [10, 13.86],
  [12, 13],
  [15, 12.23],
  [17, 11.66],
  [19, 11.07],
];
const pickard: Series = [
  [1, 12.42],
  [2, 12.39],
  [3, 11.88],
  [4, 11.83],
  [5, 11.08],
  [7, 10.29],
  [9, 9.56],
  [11, 9.85],
  [13, 10.3],
  [15, 10.12],
  [18, 10.78],
];
const boiled: Series = [
  [1, 11.9],
  [2, 12.5],
  [3, 12.7],
  [4, 13.1],
  [5, 12.8],
  [6, 12.7],
];
const boiledSabin: Series = [
  [1, 14.42],
  [2, 13.37],
  [3, 12.53],
  [4, 11.7],
  [5, 11.03],
  [6, 10.17],
];
const lids: Series = [
  [1, 0.042],
  [2, 0.098],
  [3, 0.128],
  [5, 0.176],
  [7, 0.206],
  [9, 0.226],
  [13, 0.327],
  [15, 0.466],
  [20, 0.521],
];

/** Day on which a share of the highest gain is first reached, between the readings. */
function reaches(series: Series, share: number): number {
  const want = share * Math.max(...series.map(([, gain]) => gain));
  let [before, less] = [0, 0];
  for (const [day, gain] of series) {
    if (gain >= want) return before + ((day - before) * (want - less)) / (gain - less);
    [before, less] = [day, gain];
  }
  return Number.POSITIVE_INFINITY;
}

const estimate = (oil: string) =>
  dry({
    binders: [{ binder: binder(oil)!, volume: 1 }],
    pigments: [],
    dryFilm: { low: 15, likely: 30, high: 60 },
    temperature: exactly(20),
  })!.touchDry;

describe('drying series of Gardner 1911', () => {
  it('raw linseed without drier gains most on days 7 and 8: 14.48 % (Sabin)', () => {
    const most = Math.max(...sabin.map(([, gain]) => gain));
    expect(most).toBe(14.48);
    expect(sabin.filter(([, gain]) => gain === most).map(([day]) => day)).toEqual([7, 8]);
  });

  const inside: readonly (readonly [string, Series, string])[] = [
    ['raw linseed without drier (Sabin)', sabin, 'cold-pressed-linseed'],
    ['boiled linseed (Gardner)', boiled, 'boiled-linseed'],
    ['boiled linseed (Sabin)', boiledSabin, 'boiled-linseed'],
  ];
  it.each(inside)('%s passes touch-dry inside the estimate', (_, series, oil) => {
    const { low, high } = estimate(oil);
    expect(reaches(series, 0.9)).toBeGreaterThanOrEqual(low);
    expect(reaches(series, 0.5)).toBeLessThanOrEqual(high);
    expect(reaches(series, 0.9)).toBeLessThanOrEqual(high);
  });

  it('two series lie outside, and docs/drying.md says so: raw oil dry in a day (Pickard), raw oil wet after 20 days in can lids', () => {
    const { low, high } = estimate('cold-pressed-linseed');
    expect(reaches(pickard, 0.9)).toBeLessThan(low);
    // 0.5 % of a gain that other films put at 11 to 14 %: nothing has set by the last reading
    expect(lids.at(-1)![0]).toBeGreaterThan(high);
    expect(lids.at(-1)![1]).toBeLessThan(0.1 * 11);
  });
});
