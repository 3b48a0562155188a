import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contrastRatio, HIDING } from '../../language/build/optics/measured.ts';
import { opticalData, pigmentsWithData } from '../../language/src/optics/data.ts';
import { groundOf } from '../../language/src/optics/spectrum.ts';
import { type Film, layAll, layOn, toColour } from '../../language/src/optics/stack.ts';
import { GLOSS, inward, MATT } from '../../language/src/optics/surface.ts';
import { lambert, leaving, sentBack } from '../../language/src/optics/transport.ts';
import { flat } from '../../language/src/optics/wavelengths.ts';

const pigment = (id: string, fraction: number) => ({ optical: opticalData(id)!, fraction });
const grey = groundOf([48, 0, 0], GLOSS);
const seen = (films: readonly Film[], below: Float64Array) => toColour(layAll(films, below), GLOSS).lab;

describe('glazes', () => {
  // A trial with other fits of the same films gave L* 36, a* −23 and L* 25, b* −38 (design note): loose checks.
  test('viridian, 8 µm in two thirds medium, over a grey of L* 48 turns it deep green', () => {
    const [l, a, b] = seen([{ pigments: [pigment('PG18', 0.14)], thickness: 8 }], grey);
    expect(l).toBeGreaterThan(26);
    expect(l).toBeLessThan(44);
    expect(a).toBeLessThan(-14);
    expect(Math.abs(b)).toBeLessThan(12);
  });
  test('ultramarine in the same way turns it deep blue', () => {
    const [l, , b] = seen([{ pigments: [pigment('PB29', 0.2)], thickness: 8 }], grey);
    expect(l).toBeGreaterThan(15);
    expect(l).toBeLessThan(36);
    expect(b).toBeLessThan(-24);
  });
  test('a transparent glaze never lightens, a scumble of white does', () => {
    for (const id of ['PB29', 'PG18', 'NR4', 'PB27', 'PBk9'])
      expect(seen([{ pigments: [pigment(id, 0.15)], thickness: 10 }], grey)[0]).toBeLessThan(48);
    expect(seen([{ pigments: [pigment('PW1', 0.35)], thickness: 10 }], grey)[0]).toBeGreaterThan(52);
  });
  test('three coats of 5 µm are one of 15; a wiped-out quarter is a film of a quarter', () => {
    const pigments = [pigment('PB29', 0.2)];
    const coats = layOn({ pigments, thickness: 5, coats: 3 }, grey);
    const one = layOn({ pigments, thickness: 15 }, grey);
    coats.forEach((v, i) => {
      expect(v).toBeCloseTo(one[i]!, 12);
    });
    const kept = layOn({ pigments, thickness: 20, keep: 0.25 }, grey);
    const thin = layOn({ pigments, thickness: 5 }, grey);
    kept.forEach((v, i) => {
      expect(v).toBeCloseTo(thin[i]!, 12);
    });
  });
  test('the substrate is left as it was unless it is asked to change', () => {
    const before = Float64Array.from(grey);
    layOn({ pigments: [pigment('PBk9', 0.3)], thickness: 30 }, grey);
    expect([...grey]).toEqual([...before]);
    const work = Float64Array.from(grey);
    expect(layOn({ pigments: [pigment('PBk9', 0.3)], thickness: 30 }, work, work)).toBe(work);
    expect([...work]).not.toEqual([...before]);
  });
});

describe('hiding', () => {
  // Classic hiding powers at a contrast ratio of 0.98 (from memory): lead white 15, zinc white 20, rutile 147 sq ft/lb.
  // 15 sq ft/lb of pigment alone is 1 lb / (6.7 g/cm³) over 15 sq ft = 48.6 µm of pure pigment.
  test.each(Object.entries(HIDING))('%s hides at about its classic thickness of pure pigment', (id, of) => {
    const [area, density] = of;
    const micron = 1e4 / (area * (929.03 / 453.592) * density);
    const over = (x: number, ground: number): number =>
      leaving(layOn({ pigments: [pigment(id, 1)], thickness: x }, lambert(flat(ground))), MATT)[15]!;
    const black = inward(MATT.k1, MATT);
    const white = inward(0.8, MATT);
    let x = 1;
    while (over(x, black) / over(x, white) < 0.98 && x < 1000) x *= 1.02;
    // One scale serves the two whites measured in oil, so neither is met exactly; and lead white absorbs less than the
    // thousandth of its scattering that the scale takes whites to absorb, which makes it hide later.
    expect(x / micron).toBeGreaterThan(0.6);
    expect(x / micron).toBeLessThan(1.7);
  });
  test('which needs scattering × thickness of about 25', () => {
    expect(contrastRatio(20)).toBeLessThan(0.98);
    expect(contrastRatio(30)).toBeGreaterThan(0.98);
  });
});

describe('never a number that is none', () => {
  const ids = pigmentsWithData();
  const film = fc.record({
    pigments: fc.array(
      fc.record({
        optical: fc.constantFrom(...ids).map((id) => opticalData(id)!),
        fraction: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { maxLength: 4 },
    ),
    thickness: fc.oneof(
      fc.double({ min: 0, max: 1e4, noNaN: true }),
      fc.constantFrom(0, 1e4, -3, Number.NaN),
    ),
    coats: fc.integer({ min: 0, max: 20 }),
    keep: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  test('any stack of any films', () => {
    fc.assert(
      fc.property(
        fc.array(film, { maxLength: 6 }),
        fc.constantFrom(0, 0.5, 1),
        fc.constantFrom('D65', 'D50', 'A'),
        fc.boolean(),
        (films, ground, light, matt) => {
          const internal = layAll(films, lambert(flat(ground)));
          for (const r of sentBack(internal)) expect(r >= -1e-12 && r <= 1 + 1e-12).toBe(true);
          const { lab, xyz } = toColour(internal, matt ? MATT : GLOSS, light as 'D65');
          for (const v of [...lab, ...xyz]) expect(Number.isFinite(v)).toBe(true);
          expect(lab[0]).toBeGreaterThan(-1e-9);
          expect(lab[0]).toBeLessThan(100.1);
        },
      ),
      { numRuns: 300 },
    );
  });
});
