import { describe, expect, it } from 'vitest';
import { compose, underbound } from '../../language/src/film/compose.ts';
import { exactly } from '../../language/src/materials/interval.ts';
import { alkyd, figure, film, oil, part, pasteOf, pigment, spirit } from './materials.ts';

const lead = pigment('lead white', figure(6.7, 6.83), figure(9, 12), figure(15, 16));
const umber = pigment('raw umber', figure(3.2), figure(60, 80), figure(95, 97));
const phthalo = pigment('phthalo blue', figure(1.5, 1.65), figure(35, 60));
const all = [lead, umber, phthalo];

describe('fatness', () => {
  it('of a stiff paste of any pigment lies near 0.2, of a rich glaze near 0.6 (design figures)', () => {
    const rich = [part(spirit, 20), part(alkyd, 20), part(oil('walnut', 0.925), 60)];
    for (const p of all) {
      const neat = compose(film([pasteOf(p)]))!.fatness.likely;
      expect(neat).toBeGreaterThan(0.08);
      expect(neat).toBeLessThan(0.25);
      const glaze = compose(film([pasteOf(p)], 0.6, rich))!.fatness.likely;
      expect(glaze).toBeGreaterThan(0.5);
      expect(glaze).toBeLessThan(0.72);
    }
  });

  it('compares pigments fairly where the bare binder share does not', () => {
    const [a, b] = [lead, umber].map((p) => compose(film([pasteOf(p)]))!);
    expect(Math.abs(a!.fatness.likely - b!.fatness.likely)).toBeLessThan(0.1);
    expect(Math.abs(a!.pvc.likely - b!.pvc.likely)).toBeGreaterThan(0.2);
  });

  it('does not care how uncertain the oil absorption is, beyond what matters', () => {
    const vague = pigment('vague', figure(2.5), figure(20, 80));
    const { fatness, cpvc } = compose(film([pasteOf(vague)]))!;
    const { high, low } = cpvc;
    expect(high - low).toBeGreaterThan(0.3);
    // stiffness alone spans 0.05 to 0.38 here; the oil absorption adds little
    expect(fatness.low).toBeGreaterThan(0.02);
    expect(fatness.high).toBeLessThan(0.4);
  });

  it('falls below 0 where the stated oil cannot fill the gaps', () => {
    const dry = compose(film([pasteOf(umber, oil(), exactly(0.2))]))!;
    expect(dry.fatness.high).toBeLessThan(0);
    expect(underbound(dry)).toBe(true);
    expect(underbound(compose(film([pasteOf(umber)]))!)).toBe(false);
  });

  it('rises from the lean medium to the fat one (common practice: a quarter spirit, a quarter alkyd, half safflower over half spirit, half linseed)', () => {
    const lower = [part(spirit, 50), part(oil(), 50)];
    const upper = [part(spirit, 25), part(alkyd, 25), part(oil('safflower', 0.925), 50)];
    for (const p of all)
      for (const share of [0.2, 0.4, 0.6]) {
        const below = compose(film([pasteOf(p)], share, lower))!.fatness.likely;
        const above = compose(film([pasteOf(p)], share, upper))!.fatness.likely;
        expect(above).toBeGreaterThan(below);
      }
  });
});

describe('a film', () => {
  it('counts only what stays: spirit thins the paint and leaves the fatness alone', () => {
    const neat = compose(film([pasteOf(lead)]))!;
    const thinned = compose(film([pasteOf(lead)], 0.5, [part(spirit, 1)]))!;
    expect(thinned.fatness.likely).toBeCloseTo(neat.fatness.likely, 12);
    expect(thinned.volumeSolids.likely).toBeCloseTo(0.5, 12);
    expect(thinned.wetFilm.likely).toBeCloseTo(60, 9);
    expect(thinned.volatiles[0]!.volumeFraction.likely).toBeCloseTo(0.5, 12);
  });

  it('counts the spirit of an alkyd as spirit', () => {
    const made = compose(film([pasteOf(lead)], 0.5, [part(alkyd, 1)]))!;
    // 0.94 g/ml with 40 % by mass of spirit at 0.78 g/ml: 0.482 by volume
    expect(made.mediumSolids).toBeCloseTo(1 - (0.4 * 0.94) / 0.78, 12);
    expect(made.volatiles.map((v) => v.solvent)).toEqual(['white-spirit']);
  });

  it('adds up: pigments and binders to one, applied shares to one', () => {
    const made = compose(
      film([pasteOf(lead), pasteOf(umber)], 0.3, [part(spirit, 1), part(alkyd, 1), part(oil(), 2)]),
    )!;
    const sum = [...made.pigments, ...made.binders].reduce((s, p) => s + p.volumeFraction.likely, 0);
    expect(sum).toBeCloseTo(1, 12);
    expect(made.applied.reduce((s, a) => s + a.share, 0)).toBeCloseTo(1, 12);
    expect(made.applied.map((a) => a.what)).toEqual(['paint', 'paint', 'medium']);
  });

  it('of medium alone has no pigment, of spirit alone is nothing', () => {
    const oiled = compose(film([], 1, [part(oil(), 1)]))!;
    expect(oiled.pvc.likely).toBe(0);
    expect(oiled.fatness.likely).toBe(1);
    expect(compose(film([], 1, [part(spirit, 1)]))).toBeUndefined();
    expect(compose(film([], 0, []))).toBeUndefined();
  });
});
