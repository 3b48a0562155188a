/**
 * How far a predicted colour may be off, as a ΔE00 radius. What is not known of a film (its thickness; how much of it is
 * pigment, since the medium is measured by eye; the strength of its pigments) is varied one at a time to both ends, the
 * other films left as they are; the half differences and the class residuals of the pigments that show are added in
 * quadrature. Each end is an outer bound of what painters do, so the radius is where the truth is expected, not a limit.
 */
import type { Light } from './cie.ts';
import { deltaE00 } from './difference.ts';
import { type Film, layOn, toColour } from './stack.ts';
import type { Surface } from './surface.ts';
import { BANDS, type Spectrum } from './wavelengths.ts';

export interface UncertainFilm extends Film {
  /** lowest and highest thickness as multiples of `thickness`; 0.7 and 1.3 unless said */
  readonly thicknessRange?: readonly [number, number];
  /** lowest and highest pigment volume as multiples of the likely one, from the medium's share; 1 and 1 unless said */
  readonly pigmentRange?: readonly [number, number];
}

/** µm of film a painter's hand may lay where only one figure is given: ± 30 % (assumption). */
export const HAND: readonly [number, number] = [0.7, 1.3];
const LEAST = 0.5;

/** ΔE00 radius of the colour of `films`, bottom to top, on `below`. */
export function colourRadius(
  films: readonly UncertainFilm[],
  below: Spectrum,
  face: Surface,
  light: Light = 'D65',
  belowResidual = 0,
): number {
  // Reflectances between the films, so that a varied film costs only itself and those above it.
  const states: Spectrum[] = [below];
  for (const film of films) states.push(layOn(film, states.at(-1)!));
  const top = states.at(-1)!;
  const lab = toColour(top, face, light).lab;
  const work = new Float64Array(BANDS);
  const off = (from: number, start: Spectrum): number => {
    work.set(start);
    for (let j = from; j < films.length; j++) layOn(films[j]!, work, work);
    return deltaE00(lab, toColour(work, face, light).lab);
  };
  // How much of a change beneath film i still shows on top, in ΔE00 per ΔE00.
  const shows = (i: number): number => {
    const moved = states[i]!.map((r) => r * 0.9);
    const there = deltaE00(toColour(states[i]!, face, light).lab, toColour(moved, face, light).lab);
    return there > 0 ? Math.min(1, off(i, moved) / there) : 0;
  };
  let squares = (belowResidual * shows(0)) ** 2;
  films.forEach((film, i) => {
    const scaled = (factor: number): number =>
      off(i + 1, layOn({ ...film, thickness: film.thickness * factor }, states[i]!));
    for (const [low, high] of [film.thicknessRange ?? HAND, film.pigmentRange ?? [1, 1]])
      squares += ((scaled(low!) + scaled(high!)) / 2) ** 2;
    // The film's own data count as far as the film shows: what it hides of the light from below.
    const own = Math.max(0, shows(i + 1) - shows(i));
    const weight = film.pigments.reduce((sum, p) => sum + p.fraction, 0);
    if (weight > 0)
      squares +=
        (own * own * film.pigments.reduce((sum, p) => sum + p.fraction * p.optical.residual ** 2, 0)) /
        weight;
  });
  return Math.max(LEAST, Math.sqrt(squares));
}
