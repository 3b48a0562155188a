/** From light to years: the dose that just shows, divided by what the room gives in a year. */
import type { Interval } from '../materials/interval.ts';

/** Mlx·h of a year's light; lux and hours a year. */
export const yearlyDose = (lux: number, hoursPerYear: number): number => (lux * hoursPerYear) / 1e6;

/** Years until a dose in Mlx·h is reached; undefined in the dark. */
export function yearsToDose(dose: number, lux: number, hoursPerYear: number): number | undefined {
  const years = dose / yearlyDose(lux, hoursPerYear);
  return Number.isFinite(years) && years > 0 ? years : undefined;
}

/** Years for a range of doses in a range of light; undefined where the light may be none. */
export function yearsToFade(dose: Interval, lux: Interval, hoursPerYear: Interval): Interval | undefined {
  const low = yearsToDose(dose.low, lux.high, hoursPerYear.high);
  const likely = yearsToDose(dose.likely, lux.likely, hoursPerYear.likely);
  const high = yearsToDose(dose.high, lux.low, hoursPerYear.low);
  return low === undefined || likely === undefined || high === undefined ? undefined : { low, likely, high };
}
