/** What is taken where the plan is silent. Films in µm dry per coat; one table to change. */
import { exactly, type Interval } from '../materials/interval.ts';
import type { Source } from '../materials/types.ts';
import type { LayerKind } from '../plan/plan.ts';

const practice = (text: string): Source => ({ text, mark: 'common practice' });

export const FILM: Readonly<Record<LayerKind, Interval>> = {
  size: { low: 1, likely: 3, high: 8 },
  ground: { low: 40, likely: 80, high: 150 },
  drawing: { low: 1, likely: 3, high: 10 },
  imprimatura: { low: 3, likely: 6, high: 10 },
  underlayer: { low: 10, likely: 20, high: 40 },
  layer: { low: 15, likely: 30, high: 60 },
  glaze: { low: 4, likely: 8, high: 15 },
  scumble: { low: 5, likely: 10, high: 25 },
  leaf: { low: 0.1, likely: 0.5, high: 2 },
  varnish: { low: 10, likely: 20, high: 40 },
  retouching: { low: 5, likely: 15, high: 30 },
  deposit: { low: 1, likely: 5, high: 20 },
};
export const FILM_SOURCE = practice('films of this order are usual for this kind of layer');

export const PASTE_SOURCE: Source = {
  text: 'oil in an unstated paste by the family of its pigment, in multiples of the oil absorption',
  mark: 'assumption',
};

export const TEMPERATURE = exactly(20);
export const SESSION_HOURS = 3;
export const LUX = 150;
export const LIGHT_HOURS = 3000;
export const WITHIN = 5;

/** Bounds inside which a figure is believed; outside them a rule speaks, and the study goes on with the bound. */
export const BELIEVED = {
  film: { low: 0.1, high: 10_000 },
  temperature: { low: -20, high: 60 },
  share: { low: 0, high: 1 },
  coats: { low: 1, high: 100_000 },
  days: { low: 0, high: 36_525 },
} as const;

/** A figure inside its bounds, in order, and never NaN. */
export function believed(value: Interval, bounds: { readonly low: number; readonly high: number }): Interval {
  const inside = (x: number) =>
    Number.isFinite(x) ? Math.min(bounds.high, Math.max(bounds.low, x)) : bounds.low;
  const [low, likely, high] = [inside(value.low), inside(value.likely), inside(value.high)].sort(
    (a, b) => a - b,
  );
  return { low: low!, likely: likely!, high: high! };
}
