/** Class A: K and S per µm of pure pigment, from the measured oil films. */
import { BANDS } from '../../src/optics/wavelengths.ts';
import { differences, geometricMean, type HeldOut, mean } from './evaluate.ts';
import type { MeasuredFilm } from './films.ts';
import type { Fit } from './fit.ts';
import { PAINTS, pigmentShare } from './paints.ts';
import { toSample } from './samples.ts';
import type { Derived } from './table.ts';

/**
 * Scattering of whites per µm of pure pigment at 550 nm, from the classic table of hiding powers (sq ft per lb at a
 * contrast ratio of 0.98: white lead 15, zinc oxide 20, rutile 147; from memory), which needs S·X of about 12.
 */
export const WHITE_S = { PW1: 0.25, PW4: 0.28, PW6: 1.5 } as const;
const AT_550 = 15;

/** µm of a film of thickness 1 in the fit's unit, so that lead and zinc white scatter as they should. */
export function filmMicrons(whole: Fit): number {
  const of = (id: 'PW1' | 'PW4'): number => {
    const p = PAINTS.findIndex((row) => row.id === id);
    return Math.exp(whole.lnS[p]![AT_550]!) / pigmentShare(PAINTS[p]!) / WHITE_S[id];
  };
  return geometricMean([of('PW1'), of('PW4')]);
}

export function measuredPigments(
  films: readonly MeasuredFilm[],
  whole: Fit,
  heldOut: readonly HeldOut[],
): Derived[] {
  const micron = filmMicrons(whole);
  const usual = geometricMean(whole.thickness);
  return PAINTS.flatMap((paint, p) => {
    if (!paint.id) return [];
    const per = 1 / (pigmentShare(paint) * micron);
    const spectrum = (ln: Float64Array) =>
      Float64Array.from({ length: BANDS }, (_, b) => Math.exp(ln[b]!) * per);
    const with_ = heldOut.filter((h) => h.film.mass.has(paint.name));
    const alone = films.filter((f) => f.mass.size === 1 && f.mass.has(paint.name)).map(toSample);
    const residual = mean([
      ...with_.flatMap((h) => h.thickness),
      ...alone.flatMap((s) => differences(s, whole, usual)),
    ]);
    return [
      {
        id: paint.id,
        class: 'A' as const,
        k: spectrum(whole.lnK[p]!),
        s: spectrum(whole.lnS[p]!),
        residual,
        source: 'oil-films',
        note: `${with_.length} mixtures${alone.length ? ' and the masstone' : ''}.`,
      },
    ];
  });
}
