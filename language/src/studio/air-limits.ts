/** The published limits a solvent is held against. */
import { solvent as solventNamed } from '../materials/catalogue.ts';
import type { Solvent, SolventLimit } from '../materials/types.ts';
import { middle } from './recipe.ts';
import { LIKE_TURPENTINE } from './settings.ts';
import { ppmToMgPerM3 } from './vapour.ts';

/** In mg/m³; undefined where the limit is in ppm of something without a molar mass. */
export function limitInMg(limit: SolventLimit | undefined, solvent: Solvent): number | undefined {
  if (limit?.mgPerM3 !== undefined) return limit.mgPerM3;
  if (limit?.ppm === undefined || !solvent.molarMass) return undefined;
  return ppmToMgPerM3(limit.ppm, middle(solvent.molarMass));
}

export interface CountedLimit {
  /** mg/m³, above 0 */
  readonly mg: number;
  /** true where no list names the solvent and another's limit stands in */
  readonly standIn: boolean;
}

/** The long-term limit that counts: the solvent's own lowest, else that of turpentine. */
export function countedLimit(solvent: Solvent): CountedLimit | undefined {
  const own = limitInMg(solvent.limits[0], solvent);
  if (own !== undefined && own > 0) return { mg: own, standIn: false };
  const like = solventNamed(LIKE_TURPENTINE);
  const mg = like && limitInMg(like.limits[0], like);
  return mg !== undefined && mg > 0 ? { mg, standIn: true } : undefined;
}
