import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { filmOver, filmReflectance, mixInto, opaqueReflectance } from '../../language/src/optics/film.ts';
import { BANDS, flat } from '../../language/src/optics/wavelengths.ts';

/** dR/dX = S − 2(K+S)R + S·R² (Kubelka & Munk 1931), by the classic fourth-order Runge–Kutta rule. */
function integrated(k: number, s: number, rg: number, steps = 4000): number {
  const f = (r: number): number => s - 2 * (k + s) * r + s * r * r;
  const h = 1 / steps;
  let r = rg;
  for (let i = 0; i < steps; i++) {
    const a = f(r);
    const b = f(r + (h / 2) * a);
    const c = f(r + (h / 2) * b);
    const d = f(r + h * c);
    r += (h / 6) * (a + 2 * b + 2 * c + d);
  }
  return r;
}

describe('the closed form', () => {
  test.each([
    [0.5, 1, 0.8],
    [2, 0.1, 0.9],
    [0.01, 5, 0.05],
    [3, 3, 0],
    [1e-6, 0.5, 0.3],
    [0.7, 1e-6, 0.95],
    [8, 2, 1],
    [1e-4, 1e-4, 0.5],
  ])('K·X %f, S·X %f over %f agrees with the differential equation to 1e-9', (k, s, rg) => {
    expect(Math.abs(filmReflectance(k, s, rg) - integrated(k, s, rg))).toBeLessThan(1e-9);
  });

  test('R∞ has the K/S it came from: K/S = (1 − R)²/2R', () => {
    for (const ratio of [1e-4, 0.01, 0.3, 1, 7, 120]) {
      const r = opaqueReflectance(ratio, 1);
      expect((1 - r) ** 2 / (2 * r)).toBeCloseTo(ratio, 6);
      expect(filmReflectance(ratio * 1e5, 1e5, 0.3)).toBeCloseTo(r, 9);
    }
  });

  test('a film laid in two coats is the film laid in one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (k, s, rg, cut) => {
          const once = filmReflectance(k, s, rg);
          const twice = filmReflectance(k * (1 - cut), s * (1 - cut), filmReflectance(k * cut, s * cut, rg));
          expect(Math.abs(once - twice)).toBeLessThan(1e-9);
        },
      ),
    );
  });
});

describe('limits', () => {
  test('no scattering: R = Rg·exp(−2K·X)', () => {
    for (const k of [0, 1e-5, 0.1, 1, 6])
      expect(filmReflectance(k, 0, 0.8)).toBeCloseTo(0.8 * Math.exp(-2 * k), 12);
  });
  test('no absorption: R = (Rg + S·X(1 − Rg))/(1 + S·X(1 − Rg))', () => {
    for (const s of [0, 1e-5, 0.1, 1, 40])
      expect(filmReflectance(0, s, 0.2)).toBeCloseTo((0.2 + s * 0.8) / (1 + s * 0.8), 12);
  });
  test('nothing there: the substrate', () => expect(filmReflectance(0, 0, 0.37)).toBe(0.37));
  test('black on black stays black, white on white white', () => {
    expect(filmReflectance(5, 0, 0)).toBe(0);
    expect(filmReflectance(0, 5, 1)).toBe(1);
  });
  test('10 mm of paint is R∞, whatever lies beneath', () => {
    const x = 1e4;
    for (const rg of [0, 1])
      expect(filmReflectance(0.02 * x, 0.25 * x, rg)).toBeCloseTo(opaqueReflectance(0.02, 0.25), 9);
  });
  test('white hiding: contrast ratio 0.98 is reached at S·X near 12', () => {
    // Contrast ratio over black (internal 0) and a white of 0.8, as hiding power charts define it.
    const ratio = (sx: number): number =>
      filmReflectance(0.0005 * sx, sx, 0) / filmReflectance(0.0005 * sx, sx, 0.8);
    expect(ratio(11)).toBeLessThan(0.985);
    expect(ratio(14)).toBeGreaterThan(0.975);
  });
});

test('whatever goes in, a reflectance comes out', () => {
  const any = fc.oneof(
    fc.double(),
    fc.constantFrom(0, -0, 1e-320, 1e300, Number.POSITIVE_INFINITY, Number.NaN, -1),
  );
  fc.assert(
    fc.property(any, any, any, (k, s, rg) => {
      const r = filmReflectance(k, s, rg);
      expect(r).toBeGreaterThanOrEqual(0);
      expect(r).toBeLessThanOrEqual(1);
    }),
    { numRuns: 2000 },
  );
});

test('mixing adds K and S by volume and leaves nothing of the last film behind', () => {
  const [kx, sx] = [flat(9), flat(9)];
  const one = { k: flat(0.1), s: flat(0.4) };
  const two = { k: flat(1), s: flat(0.02) };
  mixInto(kx, sx, [one, two], [0.3, 0.1], 20);
  expect(kx[7]).toBeCloseTo(20 * (0.3 * 0.1 + 0.1 * 1), 12);
  expect(sx[BANDS - 1]).toBeCloseTo(20 * (0.3 * 0.4 + 0.1 * 0.02), 12);
  mixInto(kx, sx, [], [], 20);
  const below = flat(0.5);
  filmOver(kx, sx, below);
  expect([...below]).toEqual([...flat(0.5)]);
});
