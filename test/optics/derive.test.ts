import { beforeAll, describe, expect, test } from 'vitest';
import { GROUPS, type HeldOut, leaveOneOut, mean, median } from '../../language/build/optics/evaluate.ts';
import { readFilms } from '../../language/build/optics/films.ts';
import { type Fit, fit, type Sample, SETTINGS } from '../../language/build/optics/fit.ts';
import { filmMicrons } from '../../language/build/optics/measured.ts';
import { PAINTS, pigmentShare, specificVolume } from '../../language/build/optics/paints.ts';
import { toSample } from '../../language/build/optics/samples.ts';
import { filmReflectance } from '../../language/src/optics/film.ts';
import { inward, outward } from '../../language/src/optics/surface.ts';
import { BANDS, flat } from '../../language/src/optics/wavelengths.ts';
import { seeded } from './exhaustive.ts';
import { text } from './files.ts';

describe('the fit finds again what synthetic films were made with', () => {
  const bands = Array.from({ length: BANDS }, (_, b) => b / (BANDS - 1));
  const truth = [
    { k: bands.map((t) => 0.02 + 0.15 * (1 - t) ** 6), s: bands.map((t) => 7 - 3 * t) }, // a white
    {
      k: bands.map((t) => 0.3 + 9 * Math.exp(-(((t - 0.6) / 0.2) ** 2))),
      s: bands.map((t) => 0.6 + 0.4 * t),
    }, // a blue
    { k: bands.map((t) => 0.1 + 14 / (1 + Math.exp((t - 0.55) * 30))), s: bands.map((t) => 3 + 2 * t) }, // an orange
    { k: bands.map(() => 16), s: bands.map(() => 0.2) }, // a black
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
        const k = shares.reduce((sum, [p, v]) => sum + v * truth[p]!.k[b]!, 0);
        const s = shares.reduce((sum, [p, v]) => sum + v * truth[p]!.s[b]!, 0);
        return (
          outward(filmReflectance(k * x, s * x, inward(substrate[b]!, SETTINGS.face)), SETTINGS.face) +
          0.0005 * (random() - 0.5)
        );
      }),
    }));
    return { sample: { id: String(i), shares, over } satisfies Sample, x };
  });
  const found = fit(
    made.map((m) => m.sample),
    truth.length,
    { ...SETTINGS, smooth: 1 },
  );

  test('K and S of every paint, up to the common unit of thickness', () => {
    // Thickness 1 is what the films average to, so one common factor is open.
    const unit = Math.exp(mean(made.map((m, i) => Math.log(m.x / found.thickness[i]!))));
    const off = (p: number, key: 'k' | 's') =>
      median(
        truth[p]![key].map((v, b) =>
          Math.abs(Math.log(Math.exp((key === 'k' ? found.lnK : found.lnS)[p]![b]!) / unit / v)),
        ),
      );
    for (const p of [1, 2]) expect(off(p, 'k'), `K of ${p}`).toBeLessThan(0.08);
    expect(off(3, 'k')).toBeLessThan(0.12);
    for (const p of [0, 1, 2]) expect(off(p, 's'), `S of ${p}`).toBeLessThan(0.12);
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

describe('left out in turn, the measured mixtures (CC0; Geldof et al. 2018) are predicted', () => {
  let whole: Fit;
  let heldOut: HeldOut[];
  beforeAll(() => {
    const films = readFilms(text('oil-films.csv'));
    whole = fit(films.map(toSample), PAINTS.length);
    heldOut = leaveOneOut(films, whole);
  }, 180_000);
  const of = (name: string) => heldOut.filter((h) => GROUPS.find(([n]) => n === name)![1](h.film));

  test('every mixture, its thickness read from it: median 2.1, mean 3.0', () => {
    const off = of('every mixture').flatMap((h) => h.thickness);
    expect(heldOut.length).toBe(52);
    expect(median(off)).toBeLessThan(2.1);
    expect(mean(off)).toBeLessThan(3);
  });
  test('every mixture, nothing read from it: mean 3.2', () => {
    expect(mean(of('every mixture').flatMap((h) => h.strict))).toBeLessThan(3.2);
  });
  test('50:50 with white, save the fluorescent: mean 1.9, nothing read from them', () => {
    expect(mean(of('50:50 with white, not fluorescent').flatMap((h) => h.strict))).toBeLessThan(1.9);
  });
  test('glaze-like films, their thickness read from them: mean 5', () => {
    expect(mean(of('glaze-like: colour in chalk or barytes').flatMap((h) => h.thickness))).toBeLessThan(5);
  });
  test('far better than averaging sRGB, and than one constant', () => {
    const spectral = mean(heldOut.map((h) => h.strict[0]!));
    expect(mean(heldOut.map((h) => h.srgbAverage))).toBeGreaterThan(4 * spectral);
    expect(mean(heldOut.map((h) => h.singleConstant))).toBeGreaterThan(1.5 * spectral);
  });
  test('the films come out near 50 µm, a plausible draw-down', () => {
    expect(filmMicrons(whole)).toBeGreaterThan(35);
    expect(filmMicrons(whole)).toBeLessThan(70);
  });
});
