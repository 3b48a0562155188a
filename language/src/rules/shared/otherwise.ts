/** A layer written otherwise, and whether that would do harm elsewhere: what fixes try before they propose. */
import { binder } from '../../materials/catalogue.ts';
import type { Fix, Layer, Measure, Plan } from '../../plan/plan.ts';
import type { Composition } from '../../results/study.ts';
import { compositionOf } from '../../study/what-if.ts';
import { addFields, replace } from './fixes.ts';

export type MediumOf = NonNullable<NonNullable<Layer['medium']>['of']>;

const exact = (percent: number, layer: Layer): Measure => ({
  value: { low: percent / 100, likely: percent / 100, high: percent / 100 },
  given: 'exact',
  unit: 'fraction',
  words: `${percent} %`,
  place: layer.place,
});

/** The layer with so many per cent of a medium; the medium stays where `of` is not given. */
export const withShare = (layer: Layer, percent: number, of = layer.medium?.of): Layer => ({
  ...layer,
  medium: { share: exact(percent, layer), of, place: layer.medium?.place ?? layer.place },
});

/** The layer with another medium at its own share. */
export const withMedium = (layer: Layer, of: MediumOf): Layer =>
  layer.medium ? { ...layer, medium: { ...layer.medium, of } } : layer;

/** Mediums the plan may use, but for the one the layer has. */
export const otherMediums = (plan: Plan, layer: Layer): MediumOf[] =>
  [...plan.visible.mediums.values()]
    .filter((m) => m.name !== layer.medium?.of?.name)
    .map((medium) => ({ name: medium.name, place: layer.place, is: { kind: 'medium', medium } }));

export const shareOf = (layer: Layer): number => Math.round((layer.medium?.share?.value.likely ?? 0) * 100);

export type Wanted = (c: Composition, changed: Layer) => boolean;

const holds = (layer: Layer, wanted: Wanted): boolean => {
  const c = compositionOf(layer);
  return c !== undefined && wanted(c, layer);
};

/** The least whole share from `from` to `to` per cent at which `wanted` holds, given that it holds from there on. */
export function leastShare(
  layer: Layer,
  from: number,
  to: number,
  wanted: Wanted,
  of?: MediumOf,
): number | undefined {
  if (from > to || !holds(withShare(layer, to, of), wanted)) return undefined;
  let [low, high] = [from, to];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(withShare(layer, middle, of), wanted)) high = middle;
    else low = middle + 1;
  }
  return high;
}

/** The greatest whole share from `from` to `to` per cent at which `wanted` holds, given that it holds up to there. */
export function mostShare(layer: Layer, to: number, wanted: Wanted, from = 1): number | undefined {
  if (to < from || !holds(withShare(layer, from), wanted)) return undefined;
  let [low, high] = [from, to];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (holds(withShare(layer, middle), wanted)) low = middle;
    else high = middle - 1;
  }
  return low;
}

export const takeShare = (layer: Layer, percent: number): Fix[] =>
  layer.medium?.share && layer.medium.of
    ? [
        replace(
          `Take ${percent} % of ${layer.medium.of.name} in ${layer.name}`,
          layer.medium.share.place,
          `${percent} %`,
        ),
      ]
    : [];

/** Every other medium of the plan with which `wanted` holds at the share the layer has. */
export const useMedium = (plan: Plan, layer: Layer, wanted: Wanted, most = 2): Fix[] => {
  const place = layer.medium?.of?.place;
  if (!place || !layer.medium?.share) return [];
  return otherMediums(plan, layer)
    .filter((of) => holds(withMedium(layer, of), wanted))
    .slice(0, most)
    .map((of) => replace(`Use the medium ${of.name} in ${layer.name}`, place, of.name));
};

/** What a first medium is usually made of, for a plan whose own mediums do not help, or that has none. */
const USUAL = 'stand-oil';

/**
 * The medium of the plan, other than the layer's own, of which the least share makes `wanted` hold; else a usual oil.
 */
function leastMedium(plan: Plan, layer: Layer, to: number, wanted: Wanted) {
  const at = (of: MediumOf) => {
    const percent = leastShare(layer, 1, to, wanted, of);
    return percent === undefined ? [] : [{ of, percent }];
  };
  const own = otherMediums(plan, layer)
    .flatMap(at)
    .sort((a, b) => a.percent - b.percent)[0];
  const oil = binder(USUAL);
  if (own || !oil || layer.medium?.of?.name === USUAL) return own;
  return at({ name: USUAL, place: layer.place, is: { kind: 'binder', binder: oil } })[0];
}

/** Gives a layer without medium the least share of one of the plan with which `wanted` holds. */
export function addMedium(plan: Plan, layer: Layer, to: number, wanted: Wanted): Fix[] {
  const least = layer.medium ? undefined : leastMedium(plan, layer, to, wanted);
  return least
    ? addFields(`Add ${least.percent} % of ${least.of.name} to ${layer.name}`, layer, [
        `medium ${least.percent} % ${least.of.name}`,
      ])
    : [];
}

/** Another medium at another share, where that is less than `to` per cent. */
export function changeMedium(plan: Plan, layer: Layer, to: number, wanted: Wanted): Fix[] {
  const { medium } = layer;
  if (!medium?.share || !medium.of) return [];
  const least = leastMedium(plan, layer, to, wanted);
  // at the share the layer has, changing the name is enough and told elsewhere
  if (!least || least.percent <= shareOf(layer)) return [];
  const { percent, of } = least;
  return [
    {
      title: `Take ${percent} % of ${of.name} in ${layer.name}`,
      edits: [
        { place: medium.share.place, text: `${percent} %` },
        { place: medium.of.place, text: of.name },
      ],
    },
  ];
}
