import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toLab, toXyz } from '../../language/src/optics/cie.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';
import { groundOf, smoothSpectrum } from '../../language/src/optics/spectrum.ts';
import { toColour } from '../../language/src/optics/stack.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';

test('a colour paint can have is met exactly by a smooth reflectance', () => {
  for (const lab of [
    [50, 0, 0],
    [85, -2, 90],
    [40, 60, 30],
    [30, 20, -50],
    [60, -55, 40],
    [8, 2, -3],
    [96, 0, 4],
  ] as const) {
    const { seen, off } = smoothSpectrum(lab);
    expect(off).toBeLessThan(0.01);
    expect(deltaE00(toLab(toXyz(seen)), lab)).toBeLessThan(0.01);
    expect(deltaE00(toColour(groundOf(lab, GLOSS), GLOSS).lab, lab)).toBeLessThan(0.05);
  }
});

test('any CIELAB at all gives a reflectance, and how far off it is', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -50, max: 150, noNaN: true }),
      fc.double({ min: -200, max: 200, noNaN: true }),
      fc.double({ min: -200, max: 200, noNaN: true }),
      (l, a, b) => {
        const { seen, off } = smoothSpectrum([l, a, b]);
        expect(Number.isFinite(off)).toBe(true);
        for (const r of seen) expect(r > 0 && r < 1).toBe(true);
      },
    ),
    { numRuns: 60 },
  );
});
