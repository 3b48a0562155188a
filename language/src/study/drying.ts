/** Drying of a plan's layers, and what observations change in it. */
import { dry, staysSoft } from '../drying/dry.ts';
import { asGround, dryGround } from '../drying/grounds.ts';
import { observedDrying, recalibrated } from '../drying/observe.ts';
import { SOFT_BELOW } from '../drying/settings.ts';
import { binder, dryingFactor, grounds } from '../materials/catalogue.ts';
import type { Interval } from '../materials/interval.ts';
import type { Binder, GroundMaterial } from '../materials/types.ts';
import type { Layer } from '../plan/plan.ts';
import type { Assumption, Drying } from '../results/study.ts';
import type { LayerFilm } from './film.ts';

export interface Dried {
  readonly drying?: Drying;
  readonly assumptions: readonly Assumption[];
}

const NOT_DRYING: Dried = { assumptions: [] };

/** One coat of a layer, before any observation. Temperature in °C. */
export function dried({
  material,
  resin,
  film,
  temperature,
}: {
  readonly material?: GroundMaterial;
  readonly resin?: Binder;
  readonly film: LayerFilm;
  readonly temperature: Interval;
}): Dried {
  const { composition } = film;
  // A material named beside the colour (egg, distemper) tells more of the drying than the pastes would.
  if (material) return { drying: dryGround(material), assumptions: [] };
  if (!composition) {
    if (!resin) return NOT_DRYING;
    const drying = dry({
      binders: [{ binder: resin, volume: 1 }],
      pigments: [],
      dryFilm: film.coat,
      temperature,
    });
    return { drying, assumptions: [] };
  }
  const pigments = composition.pigments.map(({ pigment, volumeFraction }) => ({
    code: pigment.code,
    factor: dryingFactor(pigment.drying.value),
    volume: volumeFraction.likely,
  }));
  const binders = composition.binders.flatMap(({ binder: id, volumeFraction }) => {
    const known = binder(id);
    return known ? [{ binder: known, volume: volumeFraction.likely }] : [];
  });
  const drying = dry({ binders, pigments, dryFilm: film.coat, temperature });
  const assumptions: Assumption[] = [];
  if (!drying) {
    const value = composition.binders.map((b) => b.binder).join(', ') || 'no binder';
    assumptions.push({
      field: 'drying',
      value: 'not estimated',
      why: `no drying time is known for ${value}`,
    });
  } else if (staysSoft(pigments))
    assumptions.push({
      field: 'firm',
      value: 'up to a year',
      why: 'films rich in lamp black or graphite may stay soft below a dry skin',
      source: SOFT_BELOW.source,
    });
  return { drying, assumptions };
}

const oilGround = grounds.find((g) => g.kind === 'oil');

/** What two layers must share for the drying of one to tell of the other. */
export const paintAndMedium = ({ composition }: Pick<LayerFilm, 'composition'>): string | undefined =>
  composition && [...composition.applied.map((a) => `${a.what} ${a.name}`)].sort().join('+');

/**
 * Drying of all layers in order. A layer with `painted` and `dry` beats its estimate, and later layers of the same
 * paints and medium follow it.
 */
export function withObservations(
  layers: readonly { readonly layer: Layer; readonly film: LayerFilm; readonly dried: Dried }[],
): readonly Dried[] {
  if (!layers.some(({ layer }) => (layer.dry && layer.painted) || (layer.kind === 'ground' && layer.colour)))
    return layers.map((l) => l.dried);
  const seen = new Map<string, { readonly ratio: number; readonly layer: string; readonly days: number }>();
  return layers.map(({ layer, film, dried: estimate }) => {
    let { drying } = estimate;
    if (!drying) return estimate;
    const assumptions = [...estimate.assumptions];
    const key = paintAndMedium(film);
    const days = layer.dry && layer.painted ? layer.dry.number - layer.painted.number : 0;
    const earlier = key === undefined ? undefined : seen.get(key);
    if (days > 0) {
      if (key !== undefined) seen.set(key, { ratio: days / drying.touchDry.likely, layer: layer.name, days });
      drying = observedDrying(drying, layer.name, days);
      assumptions.push({
        field: 'drying',
        value: `touch-dry after ${inDays(days)}`,
        why: 'it was observed; this stands before the estimate',
      });
    } else if (earlier) {
      drying = recalibrated(drying, earlier.ratio, { layer: earlier.layer, days: earlier.days });
      assumptions.push({
        field: 'drying',
        value: `${earlier.ratio.toPrecision(2)} times the estimate`,
        why: `the same paint and medium was seen dry after ${inDays(earlier.days)} in ‘${earlier.layer}’`,
      });
    }
    // A painter's eye tells when the skin is dry, not when an oil ground has done its work.
    if (layer.kind === 'ground' && film.composition) drying = asGround(drying, oilGround);
    return { drying, assumptions };
  });
}

const inDays = (days: number): string => (days === 1 ? '1 day' : `${days} days`);
