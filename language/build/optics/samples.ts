/** Measured films as samples to fit: mass of paint to volume of paint. */
import type { MeasuredFilm } from './films.ts';
import type { Sample } from './fit.ts';
import { PAINTS, specificVolume } from './paints.ts';

export function toSample(film: MeasuredFilm): Sample {
  const parts = [...film.mass].map(([name, mass]) => {
    const paint = PAINTS.findIndex((p) => p.name === name);
    if (paint < 0)
      throw new Error(`film ${film.id}: no density and oil content are known of the paint “${name}”`);
    return [paint, mass * specificVolume(PAINTS[paint]!)] as const;
  });
  const whole = parts.reduce((sum, [, volume]) => sum + volume, 0);
  return {
    id: film.id,
    shares: parts.map(([paint, volume]) => [paint, volume / whole]),
    over: [
      { substrate: film.white, seen: film.overWhite },
      { substrate: film.black, seen: film.overBlack },
    ],
  };
}
