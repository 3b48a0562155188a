/** Drying of one coat: open, touch-dry, ready and firm, in days after it was laid. */
import { exactly, type Interval, mapInterval, times } from '../materials/interval.ts';
import { alkydShare, type BinderShare, blend, oxidises, pace } from './base.ts';
import { pigmentFactor, skinFactor, temperatureFactor } from './factors.ts';
import { ALKYD, FILM, FIRM, OPEN, REACH, READY, SOFT_BELOW, THROUGH } from './settings.ts';
import type { Drying } from './times.ts';

export interface DryingInput {
  readonly binders: readonly BinderShare[];
  /** volumes in the dry film; only the ratio counts */
  readonly pigments: readonly { readonly code?: string; readonly factor: number; readonly volume: number }[];
  /** µm, one coat */
  readonly dryFilm: Interval;
  /** °C */
  readonly temperature: Interval;
}

const atLeast = (x: Interval, y: Interval): Interval => ({
  low: Math.max(x.low, y.low),
  likely: Math.max(x.likely, y.likely),
  high: Math.max(x.high, y.high),
});

/** Share of pigments that keep the depth of a film soft. */
function softShare(pigments: DryingInput['pigments']): number {
  const whole = pigments.reduce((sum, p) => sum + p.volume, 0);
  const soft = pigments.reduce(
    (sum, p) => sum + (p.code && SOFT_BELOW.codes.includes(p.code) ? p.volume : 0),
    0,
  );
  return whole > 0 ? soft / whole : 0;
}

/** True where lamp black or graphite may keep the film soft below. */
export const staysSoft = (pigments: DryingInput['pigments']): boolean =>
  softShare(pigments) >= SOFT_BELOW.from;

/** Undefined where no binder in the film dries. */
export function dry(input: DryingInput): Drying | undefined {
  const base = blend(input.binders);
  if (!base) return undefined;
  const oily = pace(input.binders).some((b) => oxidises(b.binder));
  // Temperature and pigments act on oxidation; water and spirit leave by another way, for which no figure was found.
  const warmth = oily ? temperatureFactor(input.temperature) : exactly(1);
  const pigment = exactly(oily ? pigmentFactor(input.pigments) : 1);
  const thin = times(times(base, pigment), warmth);
  const touchDry = times(thin, skinFactor(input.dryFilm));

  let ready = times(touchDry, READY);
  if (alkydShare(input.binders) >= 0.5) {
    // "The next day", whatever the hour at which it stopped being tacky.
    ready = atLeast(ready, { low: 0, likely: ALKYD.overpaint, high: ALKYD.overpaint });
  }
  let firm = atLeast(times(times(thin, FIRM), depth(input.dryFilm)), ready);
  if (staysSoft(input.pigments)) firm = atLeast(firm, { low: 0, likely: 0, high: SOFT_BELOW.days });
  return { open: times(touchDry, OPEN), touchDry, ready, firm: atLeast(withinReach(firm), ready) };
}

/** No later than these figures reach. */
export const withinReach = (x: Interval): Interval => mapInterval(x, (days) => Math.min(REACH, days));

/** Of drying through: grows with the whole film. */
function depth(film: Interval): Interval {
  const all = [film.low, film.high].flatMap((x) =>
    [THROUGH.low, THROUGH.high].map((n) => (x / FILM.reference) ** n),
  );
  const likely = (film.likely / FILM.reference) ** THROUGH.likely;
  return { low: Math.min(...all, likely), likely, high: Math.max(...all, likely) };
}
