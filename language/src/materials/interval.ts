/** An estimated figure: never one number, always a likely value with its bounds. `low ≤ likely ≤ high`. */
export interface Interval {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** A figure that is known, or taken as known. */
export const exactly = (value: number): Interval => ({ low: value, likely: value, high: value });

/** A range without a preferred value: the likely one is the middle, arithmetic or (for factors) geometric. */
export const between = (low: number, high: number, middle = (low + high) / 2): Interval => ({
  low: Math.min(low, high),
  likely: middle,
  high: Math.max(low, high),
});

/** Applies a function that rises (or falls) with its argument to all three values. */
export function mapInterval(x: Interval, f: (value: number) => number): Interval {
  const a = f(x.low);
  const b = f(x.high);
  return { low: Math.min(a, b), likely: f(x.likely), high: Math.max(a, b) };
}

/** Combines two independent intervals with a function monotonic in each argument. */
export function combine(x: Interval, y: Interval, f: (a: number, b: number) => number): Interval {
  const corners = [f(x.low, y.low), f(x.low, y.high), f(x.high, y.low), f(x.high, y.high)];
  return { low: Math.min(...corners), likely: f(x.likely, y.likely), high: Math.max(...corners) };
}

export const scale = (x: Interval, factor: number): Interval => mapInterval(x, (v) => v * factor);

/** Product of two figures that are never negative and may be low or high together. */
export const times = (x: Interval, y: Interval): Interval => ({
  low: x.low * y.low,
  likely: x.likely * y.likely,
  high: x.high * y.high,
});

export const plus = (x: Interval, y: Interval): Interval => ({
  low: x.low + y.low,
  likely: x.likely + y.likely,
  high: x.high + y.high,
});
