/** What evaporates in one sitting (one coat of one layer), by solvent, in g. */
import { binder, solvent as solventNamed } from '../materials/catalogue.ts';
import { exactly, type Interval, scale, times } from '../materials/interval.ts';
import type { Solvent } from '../materials/types.ts';
import type { Layer, PrepareMethod } from '../plan/plan.ts';
import type { LayerStudy } from '../results/study.ts';
import { asInterval, type LiquidMemo, liquidsOf, middle } from './recipe.ts';
import { AMMONIA_SHARE, BRUSHES, PREPARATION } from './settings.ts';
import { coatVolume, layerShare, type Studied } from './surface.ts';
import { varnishVolume } from './varnish.ts';

export interface Emission {
  readonly from: 'paint' | 'preparation' | 'brushes';
  readonly solvent: Solvent;
  readonly grams: Interval;
}

/** Vapour that is a hazard: not water, and nothing without a weight. */
const counts = (solvent: Solvent | undefined): solvent is Solvent =>
  solvent !== undefined && !solvent.harmless;

const mass = (ml: Interval, solvent: Solvent): Interval => {
  const sold = times(ml, asInterval(solvent.density));
  return solvent.id === 'ammonia' ? times(sold, AMMONIA_SHARE) : sold;
};

function fromPaint(study: Studied, layer: LayerStudy, support: Interval): Emission[] {
  const volume = coatVolume(study, layer, support);
  if (!volume) return [];
  return (layer.composition?.volatiles ?? []).flatMap(({ solvent: id, volumeFraction }) => {
    const volatile = solventNamed(id);
    return counts(volatile)
      ? [{ from: 'paint' as const, solvent: volatile, grams: mass(times(volume, volumeFraction), volatile) }]
      : [];
  });
}

function fromVarnish(study: Studied, layer: LayerStudy, support: Interval): Emission[] {
  const spirit = varnishVolume(study, layer, support)?.spirit;
  if (!spirit || !counts(spirit.solvent)) return [];
  return [{ from: 'paint', solvent: spirit.solvent, grams: mass(spirit.ml, spirit.solvent) }];
}

/** Solvents of a binder or medium, or of an agent, as shares of its volume. */
function solventShares(
  agent: NonNullable<Layer['prepare'][number]['agent']>['is'],
  memo: LiquidMemo,
): readonly { readonly solvent: Solvent; readonly share: Interval }[] {
  if (agent?.kind === 'agent')
    return Object.entries(agent.agent.solvents ?? {}).flatMap(([id, share]) => {
      const volatile = solventNamed(id);
      return counts(volatile) ? [{ solvent: volatile, share: exactly(share) }] : [];
    });
  return (liquidsOf(agent, memo) ?? []).flatMap(({ liquid, share }) => {
    if (liquid.kind === 'solvent')
      return counts(liquid.solvent) ? [{ solvent: liquid.solvent, share: exactly(share) }] : [];
    const { binder } = liquid;
    const carrier = binder.carrier === undefined ? undefined : solventNamed(binder.carrier);
    if (!counts(carrier) || binder.solids.low >= 1) return [];
    // g of spirit in a ml of the binder as sold, told as ml of spirit
    const spirit = (solids: number): number =>
      (share * Math.max(0, 1 - solids) * middle(binder.density)) / middle(carrier.density);
    const { low, high } = binder.solids;
    return [
      { solvent: carrier, share: { low: spirit(high), likely: spirit((low + high) / 2), high: spirit(low) } },
    ];
  });
}

function fromPreparation(study: Studied, layer: Layer, support: Interval, memo: LiquidMemo): Emission[] {
  return layer.prepare.flatMap(({ method, agent }) => {
    if (!method || !agent?.is) return [];
    const volume = preparationVolume(study, layer, support, method);
    return solventShares(agent.is, memo).map(({ solvent: s, share }) => ({
      from: 'preparation' as const,
      solvent: s,
      grams: mass(times(volume, share), s),
    }));
  });
}

/** ml of agent that one preparation of a layer's surface takes up. */
export function preparationVolume(
  study: Studied,
  layer: Layer,
  support: Interval,
  method: PrepareMethod,
): Interval {
  return times(scale(support, layerShare(study, layer)), PREPARATION[method]);
}

type Volumes = ReadonlyMap<Solvent, number>;

/** The greatest of them; of equal ones the first by name, so that no order of the text decides. */
const most = (volumes: Volumes): Solvent | undefined =>
  [...volumes].filter(([, ml]) => ml > 0).sort(([x, a], [y, b]) => b - a || (x.id < y.id ? -1 : 1))[0]?.[0];

/**
 * What a layer's brushes are cleaned in: the thinner its own medium holds most of, else the one that the mediums of all
 * layers use most of. A plan whose layers use none cleans its brushes in oil and soap.
 */
export function thinners(study: Studied, memo: LiquidMemo): (layer: Layer) => Solvent | undefined {
  const inMedium = ({ medium }: Layer): Volumes => {
    const found = new Map<Solvent, number>();
    for (const { liquid, share } of liquidsOf(medium?.of?.is, memo) ?? [])
      if (liquid.kind === 'solvent' && counts(liquid.solvent))
        found.set(liquid.solvent, (found.get(liquid.solvent) ?? 0) + share);
    return found;
  };
  const used = new Map<Solvent, number>();
  for (const { layer, composition, coats } of study.layers) {
    if (!composition) continue;
    const { wetFilm, mediumShare } = composition;
    const medium = wetFilm.likely * coats * layerShare(study, layer) * mediumShare.likely;
    for (const [solvent, share] of inMedium(layer))
      used.set(solvent, (used.get(solvent) ?? 0) + medium * share);
  }
  const plans = most(used);
  return (layer) => most(inMedium(layer)) ?? plans;
}

/** Brushes from egg, glue, gum and acrylic are washed in water. */
const WATER: readonly string[] = ['egg', 'protein', 'gum', 'acrylic'];
const wantsThinner = ({ composition }: LayerStudy): boolean =>
  composition !== undefined &&
  !composition.binders.every((b) => WATER.includes(binder(b.binder)?.kind ?? ''));

/** Everything that evaporates while one coat is laid: from the paint, the preparation before it, the brush jar after it. */
export function emissions(
  study: Studied,
  layer: LayerStudy,
  support: Interval | undefined,
  memo: LiquidMemo,
  brushes: Solvent | undefined,
): readonly Emission[] {
  return [
    ...(support ? fromPaint(study, layer, support) : []),
    ...(support ? fromVarnish(study, layer, support) : []),
    ...(support ? fromPreparation(study, layer.layer, support, memo) : []),
    ...(brushes && wantsThinner(layer)
      ? [{ from: 'brushes' as const, solvent: brushes, grams: mass(BRUSHES, brushes) }]
      : []),
  ];
}
