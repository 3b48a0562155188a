/** Figures as people read them: no more digits than the estimate deserves, the range beside the likely value. */
import type { Interval } from '../materials/interval.ts';
import type { CalendarEntry } from '../results/study.ts';
import { clocksOf, notKnownWords, timeWords } from '../studio/words.ts';

/** Two or three digits that mean something. */
export function figure(v: number): string {
  const size = Math.abs(v);
  const text =
    size >= 100 ? v.toFixed(0) : size >= 10 ? v.toFixed(1) : size >= 1 ? v.toFixed(1) : v.toFixed(2);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** `likely unit (low–high)`, or one figure where there is nothing between them. */
export function range(x: Interval | undefined, unit = ''): string {
  if (!x) return '–';
  const [low, likely, high] = [figure(x.low), figure(x.likely), figure(x.high)];
  return `${likely}${unit && ` ${unit}`}${low === high ? '' : ` (${low}–${high})`}`;
}

const LARGER: Readonly<Record<'ml' | 'g', string>> = { ml: 'l', g: 'kg' };
/** Less than this, in ml or g, nobody measures out. */
const TINY = 0.1;

/** A volume or mass to have at hand: litres and kilograms from a thousand up, and no digits for what nobody can measure. */
export function amount(x: Interval | undefined, unit: 'ml' | 'g'): string {
  if (x && x.likely >= 1000)
    return range({ low: x.low / 1000, likely: x.likely / 1000, high: x.high / 1000 }, LARGER[unit]);
  if (x && x.likely < TINY && x.likely > 0)
    return x.high < TINY ? `under ${TINY} ${unit}` : `up to ${figure(x.high)} ${unit}`;
  return range(x, unit);
}

const hundredfold = (x: Interval): Interval => ({
  low: x.low * 100,
  likely: x.likely * 100,
  high: x.high * 100,
});

/** A fraction of 1 in per cent. */
export const percent = (x: Interval | undefined): string => range(x && hundredfold(x), '%');

const toFive = (v: number) => {
  const five = Math.round(v * 20) * 5;
  return five === 0 ? 0 : five;
};

/** Fatness to the nearest 5 %: finer would pretend. */
export function fatness(x: Interval | undefined): string {
  if (!x) return '–';
  const [low, likely, high] = [toFive(x.low), toFive(x.likely), toFive(x.high)];
  return low === high ? `${likely} %` : `${likely} % (${low} to ${high})`;
}

/** A time in the unit a painter would use for it. */
export const time = (x: Interval | undefined): string => (x ? timeWords(x, figure) : '–');

/** The days of a coat or a sitting, a cell a clock; where nobody can tell them, where to look. */
export function days(
  entry: Pick<CalendarEntry, 'notBefore' | 'likely' | 'safeFrom' | 'notKnown'>,
  dated: boolean,
): readonly [notBefore: string, likely: string, safeFrom: string] {
  if (entry.notKnown) return [notKnownWords(entry.notKnown), 'not known', 'not known'];
  const clocks = clocksOf(entry, dated);
  return clocks ? [clocks.notBefore, clocks.likely, clocks.safeFrom] : ['', '', ''];
}
