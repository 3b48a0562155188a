/**
 * Days that add up, coat on coat. What is likely is added. What a day may be sooner or later is added as errors that
 * are partly the same (JCGM 100:2008, 5.2.2): D² = Σᵢ Σⱼ rᵢⱼ dᵢ dⱼ, with r = 1 for a step and itself, `SHARED.paint`
 * for the same paint and medium, `SHARED.room` for any other. One step keeps its own range; many are never wider than
 * the sum of their extremes.
 */
import { exactly, type Interval } from '../materials/interval.ts';
import { SHARED } from './settings.ts';

/** Days by which steps may be sooner and later, added up. */
interface Sides {
  readonly sooner: number;
  readonly later: number;
}

const NONE: Sides = { sooner: 0, later: 0 };
const sum = (x: Sides, y: Sides, n: number): Sides => ({
  sooner: x.sooner + n * y.sooner,
  later: x.later + n * y.later,
});

/** A paint met on the way, with all its steps so far; the one before it beneath. */
interface Met {
  readonly what: string;
  readonly steps: Sides;
  readonly before: Met | undefined;
}

/** A day of the calendar, and what it took to get there along the likely way. */
export interface Spread extends Interval {
  readonly all: Sides;
  readonly met: Met | undefined;
}

/** A day that is known: nothing before it matters. */
export const fixed = (day: number): Spread => ({ ...exactly(day), all: NONE, met: undefined });

/** So many paints back the same one is looked for. */
const BACK = 100;

function already(spread: Spread, what: string): Sides {
  let met = spread.met;
  for (let n = 0; met && n < BACK; n++) {
    if (met.what === what) return met.steps;
    met = met.before;
  }
  return NONE;
}

/** So much a sum may be out after `n` more steps of `d`: `out` before them, `all` and `same` what was added till then. */
function wider(out: number, d: number, n: number, all: number, same: number): number {
  // where another area sets the bounds, less is left than the way there would give
  const shared = Math.min(out, SHARED.room * (all - same) + SHARED.paint * same);
  return Math.sqrt(out ** 2 + 2 * n * d * shared + (n + n * (n - 1) * SHARED.paint) * d ** 2);
}

/** `n` steps of the same range later; `what` names the paint and medium that take them. */
export function after(from: Spread, step: Interval, what: string, n = 1): Spread {
  if (n === 0) return from;
  const d: Sides = { sooner: step.likely - step.low, later: step.high - step.likely };
  const likely = from.likely + n * step.likely;
  if (d.sooner === 0 && d.later === 0) {
    const days = n * step.likely;
    return { ...from, low: from.low + days, likely, high: from.high + days };
  }
  const same = already(from, what);
  return {
    low: likely - wider(from.likely - from.low, d.sooner, n, from.all.sooner, same.sooner),
    likely,
    high: likely + wider(from.high - from.likely, d.later, n, from.all.later, same.later),
    all: sum(from.all, d, n),
    met: { what, steps: sum(same, d, n), before: from.met },
  };
}

/** By the likely clock; of equal ones by the slow. */
export const isLater = (x: Interval, y: Interval): boolean =>
  x.likely > y.likely || (x.likely === y.likely && x.high > y.high);

/** Whichever is later, each clock on its own; the likely way is remembered. */
export function latest(x: Spread, y: Spread): Spread {
  const way = isLater(y, x) ? y : x;
  return { ...way, low: Math.max(x.low, y.low), high: Math.max(x.high, y.high) };
}
