/** Figures in words, with no more digits than an estimate is worth. */
import { exactly, type Interval } from '../materials/interval.ts';
import type { CalendarEntry, NotKnown } from '../results/study.ts';

/** Two significant figures, without an exponent. */
export function figureWords(x: number): string {
  if (!Number.isFinite(x)) return '?';
  const rounded = Number(x.toPrecision(2));
  return Math.abs(rounded) >= 1e6 ? rounded.toExponential(1) : String(rounded);
}

/** Ends closer than a tenth are told as one figure: more would pretend. */
const AS_ONE = 1.1;

/** `3 ml`, `about 3 ml` where the ends lie close, `3 to 7 ml` where they do not. */
export function rangeWords(x: Interval, unit: string): string {
  const [low, high] = [figureWords(x.low), figureWords(x.high)];
  if (x.low === x.high) return `${low} ${unit}`;
  if (low === high || x.high < x.low * AS_ONE) return `about ${figureWords(x.likely)} ${unit}`;
  return `${low} to ${high} ${unit}`;
}

/** Days as far as the figures of drying reach: longer times are not told apart. */
export const TEN_YEARS = 3652.5;

/** Units of time as a painter would choose them, up to how many days, and how many days each has. */
const UNITS: readonly (readonly [name: string, below: number, days: number])[] = [
  ['minutes', 1 / 24, 1 / 1440],
  ['hours', 1.5, 1 / 24],
  ['days', 60, 1],
  ['months', 730, 30.4375],
  ['years', Number.POSITIVE_INFINITY, 365.25],
];

/** A time in the unit of its likely value, the range beside it; each figure as `words` writes it. */
export function timeWords(x: Interval, words: (value: number) => string = figureWords): string {
  if (x.low >= TEN_YEARS) return 'not within 10 years';
  const [unit, , size] = UNITS.find(([, below]) => x.likely < below)!;
  const [low, likely, high] = [words(x.low / size), words(x.likely / size), words(x.high / size)];
  if (x.likely >= TEN_YEARS) return `over 10 years (from ${timeWords(exactly(x.low), words)})`;
  if (x.high >= TEN_YEARS) return `${likely} ${unit} (${low} to over 10 years)`;
  if (low === high) return `${likely} ${likely === '1' ? unit.slice(0, -1) : unit}`;
  return `${likely} ${unit} (${low}–${high})`;
}

/** What is said in place of a day nobody can tell. */
export const notKnownWords = ({ line, column }: NotKnown): string => `not known, see ${line}:${column}`;

/** Less than a second: what rounding leaves of a whole day is that day. */
export const HAIR = 1e-9;

/** First day that holds a moment (`up`: first day that begins after it), as a date where the calendar has dates. */
export function dayWords(day: number, dated: boolean, round: 'down' | 'up' = 'down'): string {
  if (!Number.isFinite(day)) return '?';
  const whole = round === 'up' ? Math.ceil(day - HAIR) : Math.floor(day + HAIR);
  const time = new Date(whole * 86_400_000);
  return dated && !Number.isNaN(time.getTime()) ? time.toISOString().slice(0, 10) : `day ${whole}`;
}

/** The days of a coat: what may begin within a day names it, what is likely or safe only within it names the next. */
export function clocksOf(
  { notBefore, likely, safeFrom }: Pick<CalendarEntry, 'notBefore' | 'likely' | 'safeFrom'>,
  dated: boolean,
): { readonly notBefore: string; readonly likely: string; readonly safeFrom: string } | undefined {
  if (notBefore === undefined || likely === undefined || safeFrom === undefined) return undefined;
  return {
    notBefore: dayWords(notBefore, dated),
    likely: dayWords(likely, dated, 'up'),
    safeFrom: dayWords(safeFrom, dated, 'up'),
  };
}

/** The same in a line, the likely day first; where nobody can tell, where to look. */
export function clocksWords(
  entry: Pick<CalendarEntry, 'notBefore' | 'likely' | 'safeFrom' | 'notKnown'>,
  dated: boolean,
): string {
  if (entry.notKnown) return notKnownWords(entry.notKnown);
  const clocks = clocksOf(entry, dated);
  if (!clocks) return '';
  const { notBefore, likely, safeFrom } = clocks;
  if (notBefore === safeFrom) return `from ${safeFrom}`;
  return `likely ${likely} (not before ${notBefore}, safe from ${safeFrom})`;
}
