/** Light in films, against full radiative transfer, closed forms and itself. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kubelkaMunk } from '../../language/build/optics/kubelka-munk.ts';
import { mixInto } from '../../language/src/optics/film.ts';
import { plate } from '../../language/src/optics/plate.ts';
import { GLOSS, outward } from '../../language/src/optics/surface.ts';
import {
  endless,
  filmOverGround,
  lambert,
  lay,
  leaving,
  newStack,
  type Stack,
} from '../../language/src/optics/transport.ts';
import { BANDS, flat } from '../../language/src/optics/wavelengths.ts';
import { greys, modelled, vectors } from './vectors.ts';

const all = vectors();

describe('films worked out by full radiative transfer', () => {
  test('every row within 0.005 of reflectance and 0.25 ΔE00', () => {
    expect(all).toHaveLength(318);
    for (const v of all) {
      const seen = modelled(v);
      expect(Math.abs(seen - v.reflectance), JSON.stringify(v)).toBeLessThan(0.005);
      expect(greys(seen, v.reflectance), JSON.stringify(v)).toBeLessThan(0.25);
    }
  });
  test('the same scheme by another program, in every printed digit', () => {
    for (const v of all) expect(Math.abs(modelled(v) - v.cones), JSON.stringify(v)).toBeLessThan(6e-7);
  });
  test('an order of magnitude nearer than Kubelka and Munk', () => {
    const off = (by: (v: (typeof all)[number]) => number) =>
      all.reduce((sum, v) => sum + greys(by(v), v.reflectance) / all.length, 0);
    expect(off((v) => v.kubelkaMunk)).toBeGreaterThan(20 * off(modelled));
  });
  test('the comparison is Kubelka and Munk: the column is what our own writing of it gives', () => {
    for (const v of all.filter(({ films }) => films.length === 1))
      expect(
        Math.abs(kubelkaMunk(2 * v.films[0]![0], 0.75 * v.films[0]![1], v.ground) - v.kubelkaMunk),
      ).toBeLessThan(3e-4);
  });
});

describe('limits', () => {
  test('no scattering, by quadrature over directions', () => {
    const rows = all.filter((v) => v.analytic !== undefined);
    expect(rows.length).toBeGreaterThan(5);
    for (const v of rows) expect(Math.abs(modelled(v) - v.analytic!)).toBeLessThan(0.005);
  });
  test('no film: the ground, as Saunderson has it', () => {
    for (const r of [0, 0.2, 0.7, 1]) expect(filmOverGround(0, 0, r)).toBeCloseTo(outward(r, GLOSS), 6);
  });
  test('no absorption over a perfect ground: all that entered comes back', () => {
    for (const s of [1e-6, 0.1, 3, 100]) expect(filmOverGround(0, s, 1)).toBeCloseTo(1 - GLOSS.k1, 5);
  });
  test('an endless film: its K/S by Kubelka and Munk over its a/s, against full transfer (64 streams)', () => {
    // design table of the project: a/s and (K/S)/(a/s)
    for (const [ratio, factor] of [
      [0.001, 2.95],
      [0.01, 3.14],
      [0.1, 3.5],
      [1, 3.73],
      [10, 3.76],
    ] as const) {
      const out = endless(ratio, 1);
      const inside = out / ((1 - 0.04) * (1 - 0.5963) + 0.5963 * out);
      expect((1 - inside) ** 2 / (2 * inside) / ratio / factor).toBeCloseTo(1, 1);
    }
    expect(endless(0.02, 0.25)).toBeCloseTo(filmOverGround(0.02 * 1e4, 0.25 * 1e4, 1), 6);
    expect(endless(0.02, 0.25)).toBeCloseTo(filmOverGround(0.02 * 1e4, 0.25 * 1e4, 0), 6);
  });
  test('black on black stays black', () => expect(filmOverGround(5, 0, 0)).toBe(0));
});

const amount = fc.oneof(
  fc.double({ min: 0, max: 20, noNaN: true }),
  fc.double({ min: -9, max: 4, noNaN: true }).map((e) => 10 ** e),
);
const share = fc.double({ min: 0, max: 1, noNaN: true });
const stackOf = (a: number, s: number, below: Stack): Stack => lay(plate(flat(a), flat(s)), below);

test('a film laid in two coats is the film laid in one', () => {
  fc.assert(
    fc.property(amount, amount, share, share, (a, s, ground, cut) => {
      const below = lambert(flat(ground));
      const once = stackOf(a, s, below);
      const twice = stackOf(a * (1 - cut), s * (1 - cut), stackOf(a * cut, s * cut, below));
      for (let i = 0; i < 9; i++) expect(Math.abs(once[i]! - twice[i]!)).toBeLessThan(1e-8);
    }),
    { numRuns: 500 },
  );
});

test('more absorption is darker, a lighter ground lighter, and no more comes out than went in', () => {
  fc.assert(
    fc.property(amount, amount, share, (a, s, ground) => {
      const r = filmOverGround(a, s, ground);
      expect(r).toBeGreaterThanOrEqual(0);
      expect(r).toBeLessThanOrEqual(1 - GLOSS.k1 + 1e-12);
      expect(filmOverGround(a * 1.1 + 1e-3, s, ground)).toBeLessThanOrEqual(r + 1e-12);
      expect(filmOverGround(a, s, Math.min(1, ground + 0.05))).toBeGreaterThanOrEqual(r - 1e-12);
    }),
    { numRuns: 1000 },
  );
});

test('where an eigenvalue meets the beam’s own nothing breaks', () => {
  // the smallest eigenvalue crosses 1/μ₀² at an albedo near a half: swept finely, the curve stays smooth
  let last = Number.NaN;
  for (let albedo = 0.2; albedo < 0.8; albedo += 1e-4) {
    const r = filmOverGround(1 - albedo, albedo, 0.5);
    if (Number.isFinite(last)) expect(Math.abs(r - last)).toBeLessThan(1e-4);
    last = r;
  }
});

test('whatever goes in, a reflectance comes out', () => {
  const any = fc.oneof(
    fc.double(),
    fc.constantFrom(0, -0, 1e-320, 1e300, Number.POSITIVE_INFINITY, Number.NaN, -1),
  );
  fc.assert(
    fc.property(any, any, any, (a, s, ground) => {
      const r = filmOverGround(a, s, ground);
      expect(r).toBeGreaterThanOrEqual(0);
      expect(r).toBeLessThanOrEqual(1);
    }),
    { numRuns: 3000 },
  );
});

test('mixing adds absorption and scattering by volume and leaves nothing of the last film behind', () => {
  const [a, s] = [flat(9), flat(9)];
  const one = { a: flat(0.1), s: flat(0.4) };
  const two = { a: flat(1), s: flat(0.02) };
  mixInto(a, s, [one, two], [0.3, 0.1], 20);
  expect(a[7]).toBeCloseTo(20 * (0.3 * 0.1 + 0.1 * 1), 12);
  expect(s[BANDS - 1]).toBeCloseTo(20 * (0.3 * 0.4 + 0.1 * 0.02), 12);
  mixInto(a, s, [], [], 20);
  const below = lambert(flat(0.5));
  const seen = leaving(lay(plate(a, s), below, newStack()), GLOSS);
  seen.forEach((r, b) => {
    expect(r).toBeCloseTo(leaving(below, GLOSS)[b]!, 12);
  });
});
