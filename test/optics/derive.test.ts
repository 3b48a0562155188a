import { describe, expect, test } from 'vitest';
import { Bordered } from '../../language/build/optics/banded.ts';
import { type ChartFilm, estimate } from '../../language/build/optics/estimate.ts';
import { GROUPS, leaveOneOut, mean, median } from '../../language/build/optics/evaluate.ts';
import { readFilms } from '../../language/build/optics/films.ts';
import { fit, type Sample, SETTINGS } from '../../language/build/optics/fit.ts';
import judged from '../../language/build/optics/judged.json' with { type: 'json' };
import { filmMicrons } from '../../language/build/optics/measured.ts';
import { PAINTS, pigmentShare, specificVolume } from '../../language/build/optics/paints.ts';
import { toSample } from '../../language/build/optics/samples.ts';
import { solve } from '../../language/src/optics/linear.ts';
import { inward } from '../../language/src/optics/surface.ts';
import { filmOverGround } from '../../language/src/optics/transport.ts';
import { BANDS, flat } from '../../language/src/optics/wavelengths.ts';
import { tries } from '../long.ts';
import { seeded } from './exhaustive.ts';
import { text } from './files.ts';

describe('the fit finds again what synthetic films were made with', () => {
  const bands = Array.from({ length: BANDS }, (_, b) => b / (BANDS - 1));
  const truth = [
    { a: bands.map((t) => 0.02 + 0.15 * (1 - t) ** 6), s: bands.map((t) => 7 - 3 * t) }, // a white
    {
      a: bands.map((t) => 0.3 + 9 * Math.exp(-(((t - 0.6) / 0.2) ** 2))),
      s: bands.map((t) => 0.6 + 0.4 * t),
    }, // a blue
    { a: bands.map((t) => 0.1 + 14 / (1 + Math.exp((t - 0.55) * 30))), s: bands.map((t) => 3 + 2 * t) }, // an orange
    { a: bands.map(() => 16), s: bands.map(() => 0.2) }, // a black
  ];
  const random = seeded(4);
  const recipes: [number, number][][] = [
    [[0, 1]],
    [[1, 1]],
    [[2, 1]],
    [
      [0, 0.9],
      [1, 0.1],
    ],
    [
      [0, 0.5],
      [1, 0.5],
    ],
    [
      [0, 0.9],
      [2, 0.1],
    ],
    [
      [0, 0.5],
      [2, 0.5],
    ],
    [
      [0, 0.95],
      [3, 0.05],
    ],
    [
      [0, 0.6],
      [3, 0.4],
    ],
    [
      [1, 0.97],
      [3, 0.03],
    ],
    [
      [2, 0.97],
      [3, 0.03],
    ],
    [
      [1, 0.4],
      [2, 0.6],
    ],
  ];
  const [white, black] = [flat(0.85), flat(0.05)];
  const made = recipes.map((shares, i) => {
    const x = Math.exp(0.3 * (random() - 0.5));
    const over = [white, black].map((substrate) => ({
      substrate,
      seen: Float64Array.from({ length: BANDS }, (_, b) => {
        const a = shares.reduce((sum, [p, v]) => sum + v * truth[p]!.a[b]!, 0);
        const s = shares.reduce((sum, [p, v]) => sum + v * truth[p]!.s[b]!, 0);
        return (
          filmOverGround(a * x, s * x, inward(substrate[b]!, SETTINGS.face)) +
          SETTINGS.face.k1 +
          0.0005 * (random() - 0.5)
        );
      }),
    }));
    return { sample: { id: String(i), shares, over } satisfies Sample, x };
  });
  const found = fit(
    made.map((m) => m.sample),
    truth.length,
  );

  test('absorption and scattering of every paint, up to the common unit of thickness', () => {
    // Thickness 1 is what the films average to, so one common factor is open.
    const unit = Math.exp(mean(made.map((m, i) => Math.log(m.x / found.thickness[i]!))));
    const off = (p: number, key: 'a' | 's') =>
      median(
        truth[p]![key].map((v, b) =>
          Math.abs(Math.log(Math.exp((key === 'a' ? found.lnA : found.lnS)[p]![b]!) / unit / v)),
        ),
      );
    for (const p of [1, 2]) expect(off(p, 'a'), `absorption of ${p}`).toBeLessThan(0.08);
    expect(off(3, 'a')).toBeLessThan(0.12);
    for (const p of [0, 1, 2]) expect(off(p, 's'), `scattering of ${p}`).toBeLessThan(0.12);
  });
  test('the thickness of every film', () => {
    const unit = Math.exp(mean(made.map((m, i) => Math.log(m.x / found.thickness[i]!))));
    // Films that hide show nothing of their thickness: only those through which the cards differ can be held to it.
    made.forEach((m, i) => {
      const shows = Math.max(
        ...m.sample.over[0]!.seen.map((v, b) => Math.abs(v - m.sample.over[1]!.seen[b]!)),
      );
      if (shows > 0.1)
        expect(Math.abs(Math.log((found.thickness[i]! * unit) / m.x)), m.sample.id).toBeLessThan(0.12);
    });
  });
  test('and explains all of it', () => {
    for (const w of found.weight) expect(w).toBeGreaterThan(0.15);
  });
});

test('handbook arithmetic: pigment volume share and density of oil paints', () => {
  // Gettens & Stout densities with the reported oil contents: lead white paint 3.66 g/cm³, pigment volume 0.473.
  const lead = PAINTS.find((p) => p.id === 'PW1')!;
  expect(1 / specificVolume(lead)).toBeCloseTo(3.66, 1);
  expect(pigmentShare(lead)).toBeCloseTo(0.473, 2);
});

describe('the measured mixtures (CC0; Geldof et al. 2018)', () => {
  const films = readFilms(text('oil-films.csv'));
  test('all of them are fitted from cold in a few dozen steps, and come to rest', () => {
    const whole = fit(films.map(toSample), PAINTS.length);
    expect(whole.converged).toBe(true);
    expect(whole.steps).toBeLessThan(100);
    // a plausible draw-down
    expect(filmMicrons(whole)).toBeGreaterThan(25);
    expect(filmMicrons(whole)).toBeLessThan(70);
  }, 120_000);
  test('one film left out is judged by a fit that never saw it: what is kept is what comes out again', () => {
    // The whole run takes minutes (`npm run bench:colour`); one film of it stands for the rest here, two in the long run.
    const some = ['09B', '08E'].slice(0, tries(1, 2));
    const again = leaveOneOut(films, SETTINGS, (film) => some.includes(film.id));
    expect(again.map((h) => h.film.id)).toEqual(expect.arrayContaining(some));
    for (const h of again) {
      expect(mean(h.strict)).toBeLessThan(1);
      expect(h.srgbAverage).toBeGreaterThan(4 * h.strict[0]!);
    }
  }, 180_000);
  const group = (name: string) => {
    const of = judged.groups.find((g) => g.name === name)!;
    expect(GROUPS.map(([n]) => n)).toContain(name);
    return of;
  };
  test('every mixture save the fluorescent, its thickness read from it: mean 2.9', () => {
    expect(group('every mixture').films).toBe(52);
    expect(group('every mixture, not fluorescent').thickness[0]).toBeLessThan(2.9);
  });
  test('50:50 with white, save the fluorescent: mean 2.6, nothing read from them', () => {
    expect(group('50:50 with white, not fluorescent').strict[0]).toBeLessThan(2.6);
  });
  test('far better than averaging sRGB, and than one constant', () => {
    const { strict, srgbAverage, singleConstant } = group('every mixture');
    expect(srgbAverage).toBeGreaterThan(4 * strict[0]!);
    expect(singleConstant).toBeGreaterThan(1.5 * strict[0]!);
  });
  test('two in three lie within the radius made from the other films: 60 to 76 %', () => {
    for (const c of judged.coverage) {
      expect(c.within, c.name).toBeGreaterThan(0.6);
      expect(c.within, c.name).toBeLessThan(0.76);
    }
  });
});

test('banded equations with a border are solved as a dense matrix is', () => {
  const random = seeded(9);
  const [size, width, border] = [40, 5, 6];
  const equations = new Bordered(size, width, border);
  const n = size + border;
  const dense = new Float64Array(n * n);
  for (let row = 0; row < 400; row++) {
    const from = Math.floor(random() * (size - width + 1));
    const at = [from, from + 2, from + width - 1, size + Math.floor(random() * border)];
    const slopes = at.map(() => random() - 0.5);
    equations.add(at, slopes, random() - 0.5);
    at.forEach((p, i) => {
      at.forEach((q, j) => {
        dense[p * n + q] = (dense[p * n + q] ?? 0) + (slopes[i] ?? 0) * (slopes[j] ?? 0);
      });
    });
  }
  const damping = 0.01;
  for (let i = 0; i < n; i++) dense[i * n + i]! *= 1 + damping;
  const expected = solve(dense, Float64Array.from(equations.right))!;
  equations.solve(damping)!.forEach((v, i) => {
    expect(v).toBeCloseTo(expected[i]!, 8);
  });
});

test('a pigment is found again from chart films of unknown load, matt and clear', () => {
  const truth = {
    a: Float64Array.from({ length: BANDS }, (_, b) => 0.05 + 1.5 * Math.exp(-(((b - 12) / 5) ** 2))),
    s: flat(0.03),
  };
  const grounds = [0.08, 0.36, 0.68, 0.96].map((r) => flat(r));
  const film = (id: string, load: number, mirrored: number, air: number): ChartFilm => ({
    kind: 'film',
    id,
    over: grounds.map((ground) => ({
      ground,
      seen: Float64Array.from(
        truth.a,
        (a, b) => filmOverGround(load * a, load * truth.s[b]! + air, ground[b]!) + mirrored,
      ),
    })),
  });
  const found = estimate([film('clear', 1.5, 0.035, 0.02), film('matt', 2.5, 0.04, 0.6)], [], {
    scattering: [Math.log(0.04), 0.4],
    peak: [Math.log(1.5), 0.3],
  });
  for (let b = 4; b < 24; b++) expect(Math.abs(Math.log(found.a[b]! / truth.a[b]!))).toBeLessThan(0.3);
  expect(Math.log(found.films[1]!.load / found.films[0]!.load)).toBeCloseTo(Math.log(2.5 / 1.5), 0);
  // what air scattered is not laid to the pigment
  expect(found.s[15]!).toBeLessThan(0.08);
  expect(found.films[1]!.air).toBeGreaterThan(5 * found.films[0]!.air);
});
