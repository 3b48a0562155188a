import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { opticalData, pigmentsWithData } from '../../language/src/optics/data.ts';
import { fromLab } from '../../language/src/optics/spectrum.ts';
import { type Film, layAll, layOn, toColour } from '../../language/src/optics/stack.ts';
import { GLOSS, MATT } from '../../language/src/optics/surface.ts';
import { colourRadius } from '../../language/src/optics/uncertainty.ts';
import { flat } from '../../language/src/optics/wavelengths.ts';

const pigment = (id: string, fraction: number) => ({ optical: opticalData(id)!, fraction });
const grey = fromLab([48, 0, 0], GLOSS);
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
  // Classic hiding powers at contrast ratio 0.98 (from memory): lead white 15, rutile 147 sq ft/lb. 15 sq ft/lb of
  // pigment alone is 1 lb / (6.7 g/cm³) over 15 sq ft = 48.6 µm of pure pigment; rutile 147 at 4.2 g/cm³ is 7.9 µm.
  test.each([
    ['PW1', 48.6],
    ['PW6', 7.9],
  ])('%s reaches a contrast ratio of 0.98 at about %f µm of pure pigment', (id, micron) => {
    // Internal contrast over black and over a white of 0.8, as the Kubelka–Munk hiding charts are drawn (S·X about 12).
    const over = (x: number, ground: number): number =>
      layOn({ pigments: [pigment(id, 1)], thickness: x }, flat(ground))[16]!;
    const ratio = (x: number): number => over(x, 0) / over(x, 0.8);
    let x = 1;
    while (ratio(x) < 0.98 && x < 1000) x *= 1.02;
    expect(x / micron).toBeGreaterThan(0.6);
    expect(x / micron).toBeLessThan(1.5);
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
          const internal = layAll(films, flat(ground));
          for (const r of internal) expect(r >= 0 && r <= 1).toBe(true);
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

describe('radius', () => {
  const glaze = { pigments: [pigment('PB29', 0.2)], thickness: 10 };
  test('grows with what is not known of the film', () => {
    const exact = colourRadius([{ ...glaze, thicknessRange: [1, 1] }], grey, GLOSS);
    const hand = colourRadius([glaze], grey, GLOSS);
    const both = colourRadius([{ ...glaze, pigmentRange: [0.7, 1.4] }], grey, GLOSS);
    expect(hand).toBeGreaterThan(exact);
    expect(both).toBeGreaterThan(hand);
    expect(both).toBeLessThan(25);
  });
  test('an opaque film forgets what is unsure beneath it', () => {
    const body = { pigments: [pigment('PW1', 0.45)], thickness: 300 };
    expect(colourRadius([glaze, body], grey, GLOSS, 'D65', 10)).toBeLessThan(2.5);
    expect(colourRadius([], grey, GLOSS, 'D65', 10)).toBeCloseTo(10, 6);
  });
});
