/** Figures in words, with no more digits than an estimate is worth. */
import type { Interval } from '../materials/interval.ts';

/** Two significant figures, without an exponent. */
export function figureWords(x: number): string {
  if (!Number.isFinite(x)) return '?';
  const rounded = Number(x.toPrecision(2));
  return Math.abs(rounded) >= 1e6 ? rounded.toExponential(1) : String(rounded);
}

/** `3 ml`, or `3 to 7 ml` where the ends differ. */
export function rangeWords(x: Interval, unit: string): string {
  const [low, high] = [figureWords(x.low), figureWords(x.high)];
  return `${low === high ? low : `${low} to ${high}`} ${unit}`;
}

/** Days in the unit a painter would say them in. */
export function daysWords(x: Interval): string {
  if (x.high < 2) return rangeWords({ low: x.low * 24, likely: x.likely * 24, high: x.high * 24 }, 'hours');
  return rangeWords(x, 'days');
}

/** A day number of the calendar: a date where the calendar has dates. */
export function dayWords(day: number, dated: boolean): string {
  if (!Number.isFinite(day)) return '?';
  const time = new Date(Math.ceil(day) * 86_400_000);
  return dated && !Number.isNaN(time.getTime()) ? time.toISOString().slice(0, 10) : `day ${Math.ceil(day)}`;
}
