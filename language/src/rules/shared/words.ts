/** Words and figures in messages. */
import type { Interval } from '../../materials/interval.ts';
import { likest } from '../../materials/nearest.ts';
import type { Source } from '../../materials/types.ts';
import type { Layer } from '../../plan/plan.ts';
import { TEN_YEARS } from '../../studio/words.ts';

export const quoted = (name: string): string => `‘${name}’`;

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[], joint = 'and'): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1)}`;
}

/** To the nearest 5 %: finer would pretend. */
export function fatness(value: number): string {
  const five = Math.round(value * 20) * 5;
  return `${five === 0 ? 0 : five} %`;
}

export const percent = (value: number, digits = 0): string => `${Number((value * 100).toFixed(digits))} %`;

/** A figure with no more digits than it deserves. */
export function figure(value: number): string {
  const size = Math.abs(value);
  return String(Number(value.toFixed(size >= 10 ? 0 : size >= 1 ? 1 : 2)));
}

export const span = (x: Interval, unit: string): string =>
  figure(x.low) === figure(x.high)
    ? `${figure(x.likely)} ${unit}`
    : unit === 'days' && x.high >= TEN_YEARS
      ? `${figure(x.low)} days to over 10 years`
      : `${figure(x.low)}–${figure(x.high)} ${unit}`;

/** When a film is firm: `firm after about 40 days`, in years from two of them. */
export function firmAfter(days: number): string {
  if (days >= TEN_YEARS) return 'not firm within ten years, as far as these figures reach';
  return days < 730
    ? `firm after about ${figure(days)} days`
    : `firm after about ${figure(days / 365.25)} years`;
}

/** A layer in a message: its kind and its name, glaze ‘mist’. */
export const label = (layer: Layer): string => `${layer.kind} ${quoted(layer.name)}`;

export const labelAtStart = (layer: Layer): string => {
  const text = label(layer);
  return text.charAt(0).toUpperCase() + text.slice(1);
};

export const didYouMean = (near: readonly string[] | undefined): string =>
  near && near.length > 0 ? ` Did you mean ${listed(near.map(quoted), 'or')}?` : '';

/** What there is to choose from, the likest names first, where none is near enough to be meant. */
export function thereIs(name: string, all: readonly string[], near: readonly string[] | undefined): string {
  if (near && near.length > 0) return didYouMean(near);
  const shown = likest(name, all.slice(0, 2000));
  if (shown.length === 0) return '';
  const more = all.length - shown.length;
  const words = [...shown.map(quoted), ...(more > 0 ? [`${more} more`] : [])];
  return ` There ${words.length > 1 ? 'are' : 'is'} ${listed(words)}.`;
}

export const practice = (text: string): Source => ({ text, mark: 'common practice' });
export const published = (text: string): Source => ({ text, mark: 'published' });
export const memory = (text: string): Source => ({ text, mark: 'memory' });
export const ours = (text: string): Source => ({ text, mark: 'assumption' });

/** For rules about the language itself. */
export const languageReference: Source = { text: 'the language reference of Paintplan', mark: 'assumption' };
