/** How far off the classes that rest on less than measured oil films are: on chart films and pigments left out. */
import { toLab, toXyz } from '../../src/optics/cie.ts';
import { deltaE00 } from '../../src/optics/difference.ts';
import { filmOverGround } from '../../src/optics/transport.ts';
import { BANDS } from '../../src/optics/wavelengths.ts';
import { type ChartFilm, type Expectations, estimate, type Pair, readFilm } from './estimate.ts';

/** ΔE00 of a chart film over each of its grounds, predicted from a pigment; load and surface read from the film. */
export function offOf(film: ChartFilm, pigment: Pair): number[] {
  const { load, mirrored, air } = readFilm(film, pigment);
  return film.over.map(({ ground, seen }) => {
    const predicted = Float64Array.from(
      { length: BANDS },
      (_, b) => filmOverGround(load * pigment.a[b]!, load * pigment.s[b]! + air, ground[b]!) + mirrored,
    );
    // The charts begin at 410 nm: before, what is predicted counts for both.
    const measured = seen.map((r, b) => (Number.isFinite(r) ? r : predicted[b]!));
    return deltaE00(toLab(toXyz(predicted)), toLab(toXyz(measured)));
  });
}

/** ΔE00 of every sort predicted from the other sorts of its pigment. */
export const heldOutSorts = (films: readonly ChartFilm[], expectations: Expectations): number[] =>
  films.flatMap((film, i) =>
    offOf(
      film,
      estimate(
        films.filter((_, j) => j !== i),
        [],
        expectations,
      ),
    ),
  );
