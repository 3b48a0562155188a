import { describe, expect, test } from 'vitest';
import type { Lab } from '../../language/src/optics/cie.ts';
import { opticalData } from '../../language/src/optics/data.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';
import { match, metamerism } from '../../language/src/optics/match.ts';
import { matchCoats, matchThickness } from '../../language/src/optics/match-thickness.ts';
import { groundOf, smoothSpectrum } from '../../language/src/optics/spectrum.ts';
import { layOn, toColour } from '../../language/src/optics/stack.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { everyRecipe, leastDifference, seeded } from './exhaustive.ts';

const paint = (id: string, fraction = 0.35) => ({
  name: id,
  pigments: [{ optical: opticalData(id)!, fraction }],
});
const below = groundOf([90, 0, 5], GLOSS);
const palette = ['PW1', 'PY43', 'PR106', 'PB29', 'PBk9'].map((id) => paint(id));

describe('against every recipe there is', () => {
  test.each([
    [60, 'body colour'],
    [10, 'a glaze'],
  ])('%i µm (%s): five paints, up to three, 60 seeded targets, within 0.1 ΔE00', (thickness) => {
    const labs = everyRecipe(palette, thickness, below, GLOSS, 3);
    expect(labs.length / 3).toBeGreaterThan(60_000);
    const random = seeded(11);
    for (let i = 0; i < 60; i++) {
      const j = 3 * Math.floor((random() * labs.length) / 3);
      const target: Lab =
        i % 2
          ? [labs[j]! + random() - 0.5, labs[j + 1]! + random() - 0.5, labs[j + 2]! + random() - 0.5]
          : [15 + 75 * random(), -50 + 100 * random(), -50 + 120 * random()];
      const found = match({ target, paints: palette, thickness, below, face: GLOSS, most: 3 }).recipes[0]!;
      expect(
        found.deltaE00 - leastDifference(labs, target),
        target.map((v) => v.toFixed(1)).join(' '),
        // and what the table of films is off, by which every recipe was tried
      ).toBeLessThan(0.1 + 0.02);
    }
  });
});

describe('a recipe', () => {
  const target: Lab = [50, 10, 15];
  const found = match({ target, paints: palette, thickness: 60, below, face: GLOSS });
  test('is in whole parts of 1 to 20 without a common factor, of at most four paints', () => {
    expect(found.reachable).toBe(true);
    expect(found.recipes.length).toBeGreaterThan(0);
    for (const { parts } of found.recipes) {
      expect(parts.length).toBeLessThanOrEqual(4);
      for (const p of parts) expect(Number.isInteger(p.parts) && p.parts >= 1 && p.parts <= 20).toBe(true);
    }
  });
  test('really gives the colour it promises', () => {
    const { parts, lab } = found.recipes[0]!;
    const whole = parts.reduce((s, p) => s + p.parts, 0);
    const film = {
      pigments: parts.map((p) => ({ optical: opticalData(p.paint)!, fraction: (0.35 * p.parts) / whole })),
      thickness: 60,
    };
    toColour(layOn(film, below), GLOSS).lab.forEach((v, i) => {
      expect(v).toBeCloseTo(lab[i]!, 6);
    });
  });
  test('medium and solids are counted: the same paint let down gives a weaker film', () => {
    const glaze = match({
      target: [60, 5, -30],
      paints: [paint('PB29')],
      medium: { share: 0.6 },
      thickness: 10,
      below,
      face: GLOSS,
    });
    const film = { pigments: [{ optical: opticalData('PB29')!, fraction: 0.35 * 0.4 }], thickness: 10 };
    expect(deltaE00(toColour(layOn(film, below), GLOSS).lab, glaze.recipes[0]!.lab)).toBeLessThan(1e-6);
    // Spirit in the medium leaves the film: more pigment stays in it.
    const lean = match({
      target: [60, 5, -30],
      paints: [paint('PB29')],
      medium: { share: 0.6, solids: 0 },
      thickness: 10,
      below,
      face: GLOSS,
    });
    expect(lean.recipes[0]!.lab[0]).toBeLessThan(glaze.recipes[0]!.lab[0]);
  });
  test('is the same every time', () => {
    expect(match({ target, paints: palette, thickness: 60, below, face: GLOSS })).toEqual(found);
  });
  test('tells how it turns under lamplight; equal spectra do not', () => {
    for (const r of found.recipes) expect(r.metamerism >= 0 && r.metamerism < 15).toBe(true);
    const { seen } = smoothSpectrum([50, 10, 20]);
    expect(metamerism(seen, seen)).toBe(0);
  });
});

describe('what cannot be reached says why', () => {
  const glaze = (target: Lab, ids: string[], on: Lab = [50, 0, 0]) =>
    match({
      target,
      paints: ids.map((id) => paint(id, 0.15)),
      thickness: 8,
      below: groundOf(on, GLOSS),
      face: GLOSS,
    });
  test('too light for a glaze on this ground', () => {
    const { reachable, limit } = glaze([80, -20, 5], ['PG18', 'PB29']);
    expect(reachable).toBe(false);
    expect(limit!.kind).toBe('too-light');
    expect(limit!.text).toMatch(/beneath/);
  });
  test('too dark', () => expect(glaze([4, 0, 0], ['PY43']).limit!.kind).toBe('too-dark'));
  test('too chromatic', () =>
    expect(glaze([49, 1, 60], ['PBr7 raw-umber', 'PY43'], [60, 0, 0]).limit?.kind).toMatch(
      /too-chromatic|too-light|hue/,
    ));
  test('hue not on the palette', () =>
    expect(
      match({
        target: [60, 40, 35],
        paints: [paint('PY43'), paint('PW1')],
        thickness: 60,
        below,
        face: GLOSS,
      }).limit!.kind,
    ).toBe('hue'));
  test('no paint, no film: nothing, and no fault', () => {
    expect(match({ target: [50, 0, 0], paints: [], thickness: 60, below, face: GLOSS })).toEqual({
      recipes: [],
      reachable: false,
    });
    expect(match({ target: [50, 0, 0], paints: palette, thickness: 0, below, face: GLOSS })).toEqual({
      recipes: [],
      reachable: false,
    });
  });
  test('targets far outside any gamut', () => {
    for (const target of [
      [0, 0, 0],
      [100, 0, 0],
      [50, 200, -200],
      [120, 0, 0],
      [-5, 90, 0],
    ] as const) {
      const { recipes } = match({ target, paints: palette, thickness: 30, below, face: GLOSS });
      for (const r of recipes)
        for (const v of [...r.lab, r.deltaE00, r.roundingLoss, r.metamerism])
          expect(Number.isFinite(v)).toBe(true);
    }
  });
});

describe('one glaze', () => {
  const pigments = [{ optical: opticalData('PG18')!, fraction: 0.12 }];
  const request = (x: number) => ({
    target: toColour(layOn({ pigments, thickness: x }, below), GLOSS).lab,
    pigments,
    below,
    face: GLOSS,
  });
  test.each([2, 7.5, 30])('finds a film of %f µm again', (x) => {
    const found = matchThickness(request(x));
    expect(found.thickness / x).toBeGreaterThan(0.99);
    expect(found.thickness / x).toBeLessThan(1.01);
    expect(found.reachable).toBe(true);
  });
  test('finds three coats of 5 µm', () =>
    expect(matchCoats(request(15), 5)).toMatchObject({ coats: 3, thickness: 15 }));
  test('says that a glaze cannot lighten', () =>
    expect(matchThickness({ ...request(5), target: [99, 0, 0] }).limit!.kind).toBe('too-light'));
});
