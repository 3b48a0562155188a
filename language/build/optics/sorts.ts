/** How far one sort of a pigment is from what its other sorts tell: every chart film left out in turn. */
import { toLab, toXyz } from '../../src/optics/cie.ts';
import { deltaE00 } from '../../src/optics/difference.ts';
import { filmOverGround } from '../../src/optics/transport.ts';
import { BANDS } from '../../src/optics/wavelengths.ts';
import { type ChartFilm, type Expectations, estimate, readFilm } from './estimate.ts';

/** ΔE00 of each film over each of its grounds, predicted from the other sorts; its own load and surface read from it. */
export function heldOutSorts(films: readonly ChartFilm[], expectations: Expectations): number[] {
  return films.flatMap((film, i) => {
    const others = estimate(
      films.filter((_, j) => j !== i),
      [],
      expectations,
    );
    const { load, mirrored, air } = readFilm(film, others);
    return film.over.map(({ ground, seen }) => {
      const predicted = Float64Array.from(
        { length: BANDS },
        (_, b) => filmOverGround(load * others.a[b]!, load * others.s[b]! + air, ground[b]!) + mirrored,
      );
      // The charts begin at 410 nm: before, what is predicted counts for both.
      const measured = seen.map((r, b) => (Number.isFinite(r) ? r : predicted[b]!));
      return deltaE00(toLab(toXyz(predicted)), toLab(toXyz(measured)));
    });
  });
}
