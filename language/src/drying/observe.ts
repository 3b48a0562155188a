/** What a painter saw dry beats what was estimated, and sets the pace for the same paint and medium afterwards. */
import type { Interval } from '../materials/interval.ts';
import { withinReach } from './dry.ts';
import type { Drying } from './times.ts';

/** A film looked at once a day was dry at some time since the day before. */
function seen(days: number): Interval {
  return { low: Math.max(days - 1, days / 2), likely: days, high: days };
}

/** The same multiples of touch-dry as before, kept in order where a floor (the next day) had bent them. */
function stretch(x: Interval, touch: Interval, to: Interval): Interval {
  const low = (x.low / touch.low) * to.low;
  const likely = Math.max(low, (x.likely / touch.likely) * to.likely);
  return { low, likely, high: Math.max(likely, (x.high / touch.high) * to.high) };
}

function paced(drying: Drying, touchDry: Interval, observed: { layer: string; days: number }): Drying {
  return {
    open: stretch(drying.open, drying.touchDry, touchDry),
    touchDry,
    ready: stretch(drying.ready, drying.touchDry, touchDry),
    // Dried through: the skin says how quick the paint is, not how thick it lies, so the same ratio applies.
    firm: withinReach(stretch(drying.firm, drying.touchDry, touchDry)),
    observed,
  };
}

/** The observed layer itself: `days` from laying to touch-dry. */
export const observedDrying = (drying: Drying, layer: string, days: number): Drying =>
  paced(drying, seen(days), { layer, days });

/**
 * A later layer of the same paint and medium. `ratio` is observed over likely of the observed layer. What is unknown of
 * binder and pigment has been seen and cancels; thickness and weather remain, so the spread is halved on its log scale.
 */
export function recalibrated(
  drying: Drying,
  ratio: number,
  observed: { layer: string; days: number },
): Drying {
  const { low, likely, high } = drying.touchDry;
  const middle = likely * ratio;
  return paced(
    drying,
    { low: middle * Math.sqrt(low / likely), likely: middle, high: middle * Math.sqrt(high / likely) },
    observed,
  );
}
