/** Layers of a resin alone: the varnish they are brushed from, and the spirit that leaves it. */
import { binderLiquid } from '../film/paste.ts';
import { solvent } from '../materials/catalogue.ts';
import { combine, type Interval, scale } from '../materials/interval.ts';
import type { Solvent } from '../materials/types.ts';
import type { LayerStudy } from '../results/study.ts';
import { VARNISH_SOLIDS, WASTE, WHITE_SPIRIT_RESINS } from './settings.ts';
import { layerShare, type Studied } from './surface.ts';

/** What the varnish of a resin layer is; undefined for every other layer. */
export function varnishLiquid(
  layer: LayerStudy,
):
  | { readonly name: string; readonly solids: Interval; readonly spirit?: Solvent; readonly sold: boolean }
  | undefined {
  const { resin } = layer.layer;
  if (layer.composition || !resin?.is) return undefined;
  const { is } = resin;
  const name = resin.name;
  // A resin sold dry is dissolved first; one sold in its spirit is taken as sold.
  if (is.solids.low >= 1)
    return {
      name,
      solids: VARNISH_SOLIDS,
      spirit: solvent(WHITE_SPIRIT_RESINS.includes(is.id) ? 'white-spirit' : 'turpentine'),
      sold: false,
    };
  const at = (end: -1 | 0 | 1) => binderLiquid(is, end, solvent);
  const [low, likely, high] = [at(-1), at(0), at(1)];
  return {
    name,
    solids: { low: low.solid, likely: likely.solid, high: high.solid },
    spirit: likely.carrier === undefined ? undefined : solvent(likely.carrier),
    sold: true,
  };
}

export interface VarnishVolume {
  readonly name: string;
  /** ml as it is brushed on */
  readonly ml: Interval;
  readonly spirit?: { readonly solvent: Solvent; readonly ml: Interval };
  /** ml of the resin in it */
  readonly resin: Interval;
  readonly sold: boolean;
}

/** Varnish for one coat, waste counted. */
export function varnishVolume(
  study: Studied,
  layer: LayerStudy,
  support: Interval,
): VarnishVolume | undefined {
  const liquid = varnishLiquid(layer);
  const dry = layer.dryFilm;
  if (!liquid || !dry || !(liquid.solids.low > 0) || !(layer.coats > 0)) return undefined;
  const film = scale(dry, 1 / layer.coats);
  const surface = scale(support, layerShare(study, layer.layer) * (1 + WASTE));
  const resin = combine(surface, film, (area, thick) => area * thick);
  const { name, solids, spirit, sold } = liquid;
  const ml = {
    low: resin.low / solids.high,
    likely: resin.likely / solids.likely,
    high: resin.high / solids.low,
  };
  if (!Number.isFinite(ml.high) || !(ml.low >= 0)) return undefined;
  const leaves = {
    low: ml.low * (1 - solids.high),
    likely: ml.likely * (1 - solids.likely),
    high: ml.high * (1 - solids.low),
  };
  return { name, ml, spirit: spirit && { solvent: spirit, ml: leaves }, resin, sold };
}
