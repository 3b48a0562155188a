/** Seeking several layers at once, held against every grey × glaze × share × coats of a grid, each mixed and looked at. */
import { describe, expect, test, vi } from 'vitest';
import { type Lab, toLab, toXyz } from '../../language/src/optics/cie.ts';
import { opticalData } from '../../language/src/optics/data.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';
import type { Paint } from '../../language/src/optics/match-film.ts';
import { type LayersRequest, matchLayers, type OpenLayer } from '../../language/src/optics/match-layers.ts';
import { groundOf } from '../../language/src/optics/spectrum.ts';
import { type BareFilm, layAll, toColour } from '../../language/src/optics/stack.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { leaving } from '../../language/src/optics/transport.ts';
import { tube } from './paints.ts';

vi.setConfig({ testTimeout: 120_000 });

const paint = (id: string): Paint => ({
  name: id,
  pigments: [{ optical: opticalData(id)!, fraction: tube(id) }],
  solids: 1,
});
const greys = [paint('PW6'), paint('PBk9')];
const glazes = ['PB29', 'PG18', 'PR177', 'PY150', 'PR101 transparent'].map(paint);
const shares = [0.3, 0.45, 0.6, 0.75];
const grey: OpenLayer = { paints: greys, sets: [[0], [1], [0, 1]], film: 20, coats: 1, shares: [0] };
const single: OpenLayer = { paints: glazes, sets: glazes.map((_, i) => [i]), film: 4, coats: 3, shares };
const below = groundOf([94, 0, 3], GLOSS);
const request = (target: Lab, open: readonly OpenLayer[] = [grey, single]): LayersRequest => ({
  open,
  areas: [{ target, below, face: GLOSS, layers: open.map((_, i) => i) }],
});

const film = (
  { film: coat, solids = 1 }: OpenLayer,
  parts: readonly (readonly [Paint, number])[],
  share: number,
  coats: number,
): BareFilm => {
  const whole = parts.reduce((sum, [, n]) => sum + n, 0);
  const dry =
    share * solids + (1 - share) * parts.reduce((sum, [p, n]) => sum + (n / whole) * (p.solids ?? 1), 0);
  return {
    pigments: parts.flatMap(([p, n]) =>
      p.pigments.map(({ optical, fraction }) => ({
        optical,
        fraction: ((1 - share) * (n / whole) * fraction) / dry,
      })),
    ),
    thickness: coat * coats,
  };
};
const colour = (films: readonly BareFilm[]): Lab => toColour(layAll(films, below), GLOSS).lab;

/** The greys a knife can measure: white, black, and every whole ratio up to twelve. */
const ladder = [
  [1, 0],
  [0, 1],
  ...Array.from({ length: 12 }, (_, i) => [i + 1, 1]),
  ...Array.from({ length: 11 }, (_, i) => [1, i + 2]),
];
const grid: Lab[] = ladder.flatMap(([w, b]) =>
  glazes.flatMap((g) =>
    shares.flatMap((share) =>
      [1, 2, 3].map((coats) =>
        colour([
          film(
            grey,
            [
              [greys[0]!, w!],
              [greys[1]!, b!],
            ].filter(([, n]) => n !== 0) as [Paint, number][],
            0,
            1,
          ),
          film(single, [[g, 1]], share, coats),
        ]),
      ),
    ),
  ),
);

/** Deterministic numbers from 0 to 1 (Park and Miller, CACM 31 (1988) 1192). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

describe('One grey and one glaze', () => {
  test('come as near as the best of the whole grid, for 24 colours in it and around it', () => {
    const next = random(20261128);
    for (let i = 0; i < 24; i++) {
      const near = grid[Math.floor(next() * grid.length)]!;
      const target = near.map((v) => v + (next() - 0.5) * 8) as unknown as Lab;
      const best = Math.min(...grid.map((lab) => deltaE00(target, lab)));
      const [way] = matchLayers(request(target));
      expect(way!.areas[0]!.deltaE00, `${target}`).toBeLessThan(best + 0.1);
    }
  });

  test('the colour promised is the colour of these films', () => {
    for (const way of matchLayers(request([50, 20, 30]))) {
      const films = way.layers.map((l, i) =>
        film(
          [grey, single][i]!,
          l.parts.map((p) => [[...greys, ...glazes].find((g) => g.name === p.paint)!, p.parts] as const),
          l.share,
          l.coats,
        ),
      );
      expect(deltaE00(colour(films), way.areas[0]!.lab)).toBeLessThan(1e-6);
    }
  });
});

test('Two areas are served together: one glaze over two greys', () => {
  const glaze = film(single, [[glazes[3]!, 1]], 0.6, 2);
  const bodies = [
    film(
      grey,
      [
        [greys[0]!, 8],
        [greys[1]!, 1],
      ],
      0,
      1,
    ),
    film(
      grey,
      [
        [greys[0]!, 1],
        [greys[1]!, 1],
      ],
      0,
      1,
    ),
  ];
  const areas = bodies.map((body, i) => ({
    target: colour([body, glaze]),
    below,
    face: GLOSS,
    layers: [i, 2],
  }));
  const [way] = matchLayers({ open: [grey, grey, single], areas });
  for (const area of way!.areas) expect(area.deltaE00).toBeLessThan(1);
});

test('The glow is what is lost where the glaze lies on black', () => {
  for (const way of matchLayers(request([45, 10, 25]))) {
    const [body, glaze] = way.layers.map((l, i) =>
      film(
        [grey, single][i]!,
        l.parts.map((p) => [[...greys, ...glazes].find((g) => g.name === p.paint)!, p.parts] as const),
        l.share,
        l.coats,
      ),
    );
    const black = groundOf([0, 0, 0], GLOSS);
    const y = (films: readonly BareFilm[], on: typeof below) =>
      toXyz(leaving(layAll(films, on), GLOSS), 'D65')[1];
    expect(way.areas[0]!.glow).toBeCloseTo(1 - y([glaze!], black.fill(0)) / y([body!, glaze!], below), 6);
    expect(toLab(toXyz(leaving(layAll([body!, glaze!], below), GLOSS), 'D65'), 'D65')[0]).toBeCloseTo(
      way.areas[0]!.lab[0],
      6,
    );
  }
});

test('The same question has the same answer, and no paints or no areas have none', () => {
  const ask = () => JSON.stringify(matchLayers(request([60, 5, 20])));
  expect(ask()).toBe(ask());
  expect(matchLayers(request([60, 5, 20], [{ ...grey, sets: [] }]))).toEqual([]);
  expect(matchLayers({ open: [grey], areas: [] })).toEqual([]);
});
