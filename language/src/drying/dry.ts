/** Drying of one coat: open, touch-dry, ready and firm, in days after it was laid. */
import { exactly, type Interval, mapInterval, times } from '../materials/interval.ts';
import { alkydShare, type BinderShare, blend, oxidises, pace, sets } from './base.ts';
import { pigmentFactor, settingFactor, skinFactor, temperatureFactor } from './factors.ts';
import { ALKYD, FILM, FIRM, OPEN, REACH, READY, SETTING, SOFT_BELOW, THROUGH } from './settings.ts';
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

const atMost = (x: Interval, y: Interval): Interval => ({
  low: Math.min(x.low, y.low),
  likely: Math.min(x.likely, y.likely),
  high: Math.min(x.high, y.high),
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

/**
 * When a film that holds alkyd or resin has set. `alone` is their own time; what oil is beside them, which would stay
 * open as `oilOpen` has it, keeps them from it.
 */
function setting(
  binders: readonly BinderShare[],
  alone: Interval,
  oilOpen: (base: Interval) => Interval,
): Interval | undefined {
  const whole = binders.reduce((sum, b) => sum + b.volume, 0);
  const share = binders.reduce((sum, b) => sum + (sets(b.binder) ? b.volume : 0), 0) / whole;
  if (!(share > 0)) return undefined;
  const base = blend(binders.filter((b) => oxidises(b.binder) && !sets(b.binder)));
  if (!base) return alone;
  const oil = oilOpen(base);
  const weight = (SETTING.weight * share) / (SETTING.weight * share + 1 - share);
  const mixed = (end: keyof Interval) => oil[end] ** (1 - weight) * alone[end] ** weight;
  return { low: mixed('low'), likely: mixed('likely'), high: mixed('high') };
}

/** Undefined where no binder in the film dries. */
export function dry(input: DryingInput): Drying | undefined {
  const base = blend(input.binders);
  if (!base) return undefined;
  const oily = pace(input.binders).some((b) => oxidises(b.binder));
  // Temperature and pigments act on oxidation; water and spirit leave by another way, for which no figure was found.
  const warmth = oily ? temperatureFactor(input.temperature) : exactly(1);
  const pigment = exactly(oily ? pigmentFactor(input.pigments) : 1);
  const thin = times(times(base, pigment), warmth);
  const skin = skinFactor(input.dryFilm);
  const touchDry = times(thin, skin);

  let ready = times(touchDry, READY);
  if (alkydShare(input.binders) >= 0.5) {
    // "The next day", whatever the hour at which it stopped being tacky.
    ready = atLeast(ready, { low: 0, likely: ALKYD.overpaint, high: ALKYD.overpaint });
  }
  let firm = atLeast(times(times(thin, FIRM), depth(input.dryFilm)), ready);
  if (staysSoft(input.pigments)) firm = atLeast(firm, { low: 0, likely: 0, high: SOFT_BELOW.days });
  // the binder begins to cure, or it has set before
  const cured = times(touchDry, OPEN);
  const set = setting(
    input.binders,
    times(SETTING.days, times(settingFactor(input.dryFilm), warmth)),
    (oil) => times(times(times(oil, pigment), times(warmth, skin)), OPEN),
  );
  return { open: set ? atMost(cured, set) : cured, touchDry, ready, firm: atLeast(withinReach(firm), ready) };
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
