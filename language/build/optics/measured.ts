/** Class A: absorption and scattering per µm of pure pigment, from the measured oil films. */
import { inward, MATT } from '../../src/optics/surface.ts';
import { filmOverGround } from '../../src/optics/transport.ts';
import { BANDS } from '../../src/optics/wavelengths.ts';
import { geometricMean, type HeldOut } from './evaluate.ts';
import type { MeasuredFilm } from './films.ts';
import type { Fit } from './fit.ts';
import { PAINTS, pigmentShare } from './paints.ts';
import { expectedOffOf } from './radius.ts';
import type { Derived } from './table.ts';

/**
 * Hiding power of whites in oil, square feet a pound of pigment covers at a contrast ratio of 0.98 (the classic table,
 * from memory), and density, g/cm³.
 */
export const HIDING = { PW1: [15, 6.7], PW4: [20, 5.65], PW6: [147, 4.2] } as const;
const CM2_PER_G = 929.03 / 453.592;
/** What whites absorb as a share of what they scatter (assumption). */
const WHITE_ABSORBS = 1e-3;
/** Contrast cards: black, and white of this reflectance. */
const WHITE_CARD = 0.8;
const AT_550 = 15;

/** Ratio of reflectances over black and over the white card, mirrored light included, of a white film of scattering `s`. */
export function contrastRatio(s: number, absorbs = WHITE_ABSORBS): number {
  const over = (r: number) => filmOverGround(absorbs * s, s, inward(r, MATT)) + MATT.k1;
  return over(MATT.k1) / over(WHITE_CARD);
}

/** Scattering × thickness at which a white film reaches a contrast ratio of 0.98. */
const HIDES = (() => {
  let [low, high] = [1, 100];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (contrastRatio(middle) < 0.98) low = middle;
    else high = middle;
  }
  return low;
})();

/** Scattering per µm of pure pigment at 550 nm that gives a white its classic hiding power. */
export function hidingScattering(id: keyof typeof HIDING): number {
  const [area, density] = HIDING[id];
  return HIDES / (1e4 / (area * CM2_PER_G * density));
}

/** µm of a film of thickness 1 in the fit's unit, so that lead and zinc white hide as they should. */
export function filmMicrons(whole: Fit): number {
  const of = (id: 'PW1' | 'PW4'): number => {
    const p = PAINTS.findIndex((row) => row.id === id);
    return Math.exp(whole.lnS[p]![AT_550]!) / pigmentShare(PAINTS[p]!) / hidingScattering(id);
  };
  return geometricMean([of('PW1'), of('PW4')]);
}

export function measuredPigments(
  films: readonly MeasuredFilm[],
  whole: Fit,
  heldOut: readonly HeldOut[],
): Derived[] {
  const micron = filmMicrons(whole);
  const all = heldOut.flatMap((h) => h.thickness);
  return PAINTS.flatMap((paint, p) => {
    if (!paint.id) return [];
    const per = 1 / (pigmentShare(paint) * micron);
    const spectrum = (ln: Float64Array) =>
      Float64Array.from({ length: BANDS }, (_, b) => Math.exp(ln[b]!) * per);
    const with_ = heldOut.filter((h) => h.film.mass.has(paint.name));
    const alone = films.some((f) => f.mass.size === 1 && f.mass.has(paint.name));
    const residual = expectedOffOf(
      with_.flatMap((h) => h.thickness),
      all,
    );
    return [
      {
        id: paint.id,
        class: 'A' as const,
        a: spectrum(whole.lnA[p]!),
        s: spectrum(whole.lnS[p]!),
        residual,
        source: 'oil-films',
        note: `${with_.length} mixtures${alone ? ' and the masstone' : ''}.`,
      },
    ];
  });
}
