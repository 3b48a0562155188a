import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toLab, toXyz } from '../../language/src/optics/cie.ts';
import { opticalData } from '../../language/src/optics/data.ts';
import { fromLab } from '../../language/src/optics/spectrum.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { calibrate, type SwatchColour } from '../../language/src/optics/swatches.ts';
import { endless, filmOverGround } from '../../language/src/optics/transport.ts';
import { BANDS } from '../../language/src/optics/wavelengths.ts';

const white = { optical: opticalData('PW1')!, fraction: 0.45 };
const FRACTION = 0.3;
const ultramarine = opticalData('PB29')!;

/** What a painter would measure of a pigment that is `times` as strong as ultramarine. */
function painted(times: number): {
  masstone: SwatchColour;
  tint: SwatchColour;
  black: SwatchColour;
  white: SwatchColour;
} {
  const see = (look: (b: number) => number) =>
    toLab(toXyz(Float64Array.from({ length: BANDS }, (_, b) => look(b))));
  const [a, s] = [ultramarine.a.map((v) => v * times), ultramarine.s.map((v) => v * times)];
  const over = (lab: [number, number, number]) => {
    const ground = fromLab(lab, GLOSS);
    return see((b) => filmOverGround(a[b]! * FRACTION * 5, s[b]! * FRACTION * 5, ground[b]!));
  };
  return {
    masstone: { kind: 'masstone', lab: see((b) => endless(a[b]!, s[b]!)) },
    tint: {
      kind: 'tint',
      parts: 10,
      white,
      lab: see((b) =>
        endless(
          FRACTION * a[b]! + 10 * 0.45 * white.optical.a[b]!,
          FRACTION * s[b]! + 10 * 0.45 * white.optical.s[b]!,
        ),
      ),
    },
    black: { kind: 'over-black', thickness: 5, lab: over([8, 0, 0]) },
    white: { kind: 'over-white', thickness: 5, lab: over([94, 0, 3]) },
  };
}

describe('swatches give absorption and scattering back', () => {
  const strong = painted(1.6);
  test.each([
    ['masstone and tint', [strong.masstone, strong.tint]],
    ['over black and over white', [strong.black, strong.white]],
    ['all four', [strong.masstone, strong.tint, strong.black, strong.white]],
  ])('%s of a pigment 1.6 times as strong', (_, swatches) => {
    const { data, inconsistent, swatches: report } = calibrate(ultramarine, FRACTION, swatches);
    expect(inconsistent).toBeUndefined();
    const peak = ultramarine.a.indexOf(Math.max(...ultramarine.a));
    expect(data!.a[peak]! / ultramarine.a[peak]!).toBeGreaterThan(1.35);
    expect(data!.a[peak]! / ultramarine.a[peak]!).toBeLessThan(1.8);
    for (const r of report) expect(r.after!).toBeLessThan(1.5);
    const sum = (key: 'before' | 'after') => report.reduce((s, r) => s + r[key]!, 0);
    expect(sum('after')).toBeLessThan(sum('before') / 2);
  });
  test('swatches of the class itself change nothing that shows', () => {
    const same = painted(1);
    const { swatches } = calibrate(ultramarine, FRACTION, [same.masstone, same.tint]);
    for (const s of swatches) expect(s.after!).toBeLessThan(0.3);
  });
  test('a pigment like nothing known is found from its swatches alone', () => {
    const { data, swatches } = calibrate(undefined, FRACTION, [strong.masstone, strong.tint]);
    for (const s of swatches) expect(s.after!).toBeLessThan(1.5);
    expect(data!.confidence).toBe('B');
  });
});

describe('swatches that cannot be', () => {
  test('a tint darker than the masstone is named, and the class data stay', () => {
    const { data, inconsistent } = calibrate(ultramarine, FRACTION, [
      { kind: 'masstone', lab: [50, 10, -40] },
      { kind: 'tint', lab: [30, 10, -40], parts: 8, white },
    ]);
    expect(inconsistent).toMatch(/darker than the masstone/);
    expect(data).toBe(ultramarine);
  });
  test('lighter over black than over white is named', () => {
    const { inconsistent } = calibrate(ultramarine, FRACTION, [
      { kind: 'over-black', lab: [60, 0, -20], thickness: 20 },
      { kind: 'over-white', lab: [40, 0, -20], thickness: 20 },
    ]);
    expect(inconsistent).toMatch(/[Oo]ver black/);
  });
  test('colours no one pigment can have are named with what stays', () => {
    const { inconsistent } = calibrate(ultramarine, FRACTION, [
      { kind: 'masstone', lab: [60, 80, 60] },
      { kind: 'tint', lab: [80, -50, 40], parts: 8, white },
    ]);
    expect(inconsistent).toMatch(/ΔE00/);
  });
  test('anything at all: numbers, never NaN', () => {
    const lab = fc.tuple(
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: -100, max: 100, noNaN: true }),
      fc.double({ min: -100, max: 100, noNaN: true }),
    );
    const swatch = fc.oneof(
      lab.map((l): SwatchColour => ({ kind: 'masstone', lab: l })),
      fc
        .tuple(lab, fc.double({ min: 0, max: 100, noNaN: true }))
        .map(([l, parts]): SwatchColour => ({ kind: 'tint', lab: l, parts, white })),
      fc
        .tuple(
          lab,
          fc.double({ min: 0, max: 1000, noNaN: true }),
          fc.constantFrom('over-black' as const, 'over-white' as const),
        )
        .map(([l, thickness, kind]): SwatchColour => ({ kind, lab: l, thickness })),
    );
    fc.assert(
      fc.property(fc.array(swatch, { maxLength: 4 }), fc.boolean(), (swatches, known) => {
        const { data, swatches: report } = calibrate(known ? ultramarine : undefined, FRACTION, swatches);
        for (const v of data ? [...data.a, ...data.s, data.residual] : [])
          expect(Number.isFinite(v) && v >= 0).toBe(true);
        for (const r of report)
          for (const v of [r.before, r.after]) if (v !== undefined) expect(Number.isFinite(v)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});
