/** What quickens and slows a film: thickness, temperature, pigment. Each on its own, as multiples of the base time. */
import type { Interval } from '../materials/interval.ts';
import { BASE_TEMPERATURE, FILM, Q10, SETTING, SKIN } from './settings.ts';

const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x));

/** Lowest, likely and highest of a function over all pairs of ends. */
function corners(x: Interval, y: Interval, f: (a: number, b: number) => number): Interval {
  const all = [f(x.low, y.low), f(x.low, y.high), f(x.high, y.low), f(x.high, y.high), f(x.likely, y.likely)];
  return { low: Math.min(...all), likely: f(x.likely, y.likely), high: Math.max(...all) };
}

/** Of the skin: a film of 15 to 60 µm dry counts as it is, others as the nearer of these. */
export const skinFactor = (dryFilm: Interval): Interval =>
  corners(dryFilm, SKIN, (x, n) => (clamp(x, FILM.thinnest, FILM.thickest) / FILM.reference) ** n);

/** Of setting: a film counts as it is, however thin; a thick one sets from above like one of 60 µm. */
export const settingFactor = (dryFilm: Interval): Interval =>
  corners(dryFilm, SETTING.thickness, (x, n) => (Math.min(x, FILM.thickest) / FILM.reference) ** n);

/** Q10^((20 − T) / 10); temperatures in °C. */
export const temperatureFactor = (temperature: Interval): Interval =>
  corners(temperature, Q10, (t, q) => q ** ((BASE_TEMPERATURE - t) / 10));

/**
 * Q10 between two temperatures (°C) from an activation energy in kJ/mol: exp(Ea/R · (1/T1 − 1/T2)).
 */
export function q10FromActivation(kiloJoulePerMole: number, from: number, to = from + 10): number {
  const kelvin = 273.15;
  const gas = 8.314462618e-3;
  return Math.exp((kiloJoulePerMole / gas) * (1 / (from + kelvin) - 1 / (to + kelvin)));
}

/**
 * Of a mixture of pigments: the geometric mean weighted by volume. Geometric because a drier and a retarder of opposite
 * strength should cancel; by volume because a film is judged by what fills it, and a weighting by mass would let the
 * heavy lead and cadmium colours speak for light ones that fill as much of it.
 */
export function pigmentFactor(
  pigments: readonly { readonly factor: number; readonly volume: number }[],
): number {
  let sum = 0;
  let log = 0;
  for (const { factor, volume } of pigments) {
    if (!(volume > 0 && factor > 0)) continue;
    sum += volume;
    log += volume * Math.log(factor);
  }
  return sum > 0 ? Math.exp(log / sum) : 1;
}
