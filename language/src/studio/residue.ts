/** What stays on a painting of a liquid that is rubbed over it and wiped off, beside what is poured. */
import { binderLiquid } from '../film/paste.ts';
import { isWipedOff, RESIDUE } from '../film/residue.ts';
import { solvent } from '../materials/catalogue.ts';
import { type Interval, scale, times } from '../materials/interval.ts';
import type { Binder } from '../materials/types.ts';
import type { Layer, Preparation } from '../plan/plan.ts';
import { liquidsOf } from './recipe.ts';
import { layerShare, type Studied } from './surface.ts';

/** Share of the liquid, by volume, that does not evaporate; of some binders only, where `which` says so. */
export function staysOf(
  { method, agent }: Preparation,
  which: (binder: Binder) => boolean = () => true,
): number {
  if (!method || !isWipedOff(method)) return 0;
  if (!agent) return method === 'oil-out' ? 1 : 0;
  let stays = 0;
  for (const { liquid, share } of liquidsOf(agent.is) ?? [])
    if (liquid.kind === 'binder' && which(liquid.binder))
      stays += share * binderLiquid(liquid.binder, 0, solvent).solid;
  return stays;
}

/** ml of it on a layer's surface before one coat; undefined where nothing stays. */
export function residueVolume(
  study: Studied,
  layer: Layer,
  support: Interval,
  preparation: Preparation,
): Interval | undefined {
  const stays = staysOf(preparation);
  return stays > 0 ? scale(times(scale(support, layerShare(study, layer)), RESIDUE), stays) : undefined;
}
