import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  diffuseInternalReflectance,
  GLOSS,
  inward,
  MATT,
  mirroredShare,
  outward,
  surface,
} from '../../language/src/optics/surface.ts';

/** Fresnel's reflectance of unpolarised light from inside a medium of index n, angle θ inside. */
function fresnelInside(n: number, theta: number): number {
  const sin = n * Math.sin(theta);
  if (sin >= 1) return 1;
  const [ci, ct] = [Math.cos(theta), Math.sqrt(1 - sin * sin)];
  const s = ((n * ci - ct) / (n * ci + ct)) ** 2;
  const p = ((n * ct - ci) / (n * ct + ci)) ** 2;
  return (s + p) / 2;
}

test.each([1.33, 1.47, 1.5, 1.57, 2])(
  'diffuse internal reflectance at n = %f is Fresnel’s, averaged over all directions',
  (n) => {
    const steps = 200_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const u = (i + 0.5) / steps; // sin² of the angle is even for diffuse light
      sum += fresnelInside(n, Math.asin(Math.sqrt(u)));
    }
    expect(diffuseInternalReflectance(n)).toBeCloseTo(sum / steps, 4);
  },
);

test('the figures paint books print: n 1.5 gives k1 0.04 and k2 0.596', () => {
  // Saunderson, JOSA 32 (1942) 727, works with 0.04 and values of k2 from 0.4 to 0.6 (from memory).
  // at right angles ((n − 1)/(n + 1))²; at 8° a little more (Fresnel)
  expect(mirroredShare(1.5)).toBeCloseTo(0.0400063, 7);
  expect(diffuseInternalReflectance(1.5)).toBeCloseTo(0.596, 3);
  expect(diffuseInternalReflectance(1)).toBe(0);
});

test('inward undoes outward', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 1.2, max: 2, noNaN: true }),
      fc.boolean(),
      (r, n, specular) => {
        const face = surface(specular, n);
        expect(inward(outward(r, face), face)).toBeCloseTo(r, 9);
      },
    ),
  );
});

test('a matt face is lighter than a glossy one by what it mirrors', () => {
  expect(outward(0.1, MATT) - outward(0.1, GLOSS)).toBeCloseTo(mirroredShare(1.5), 9);
  expect(outward(1, MATT)).toBeCloseTo(1, 9);
});

test('what no paint shows becomes the nearest that one does', () => {
  expect(inward(0.01, MATT)).toBe(0);
  expect(inward(1.2, GLOSS)).toBe(1);
  expect(inward(Number.NaN, GLOSS)).toBe(0);
});
