/** The published limits a solvent is held against: of several the strictest. */
import { solvent as solventNamed } from '../materials/catalogue.ts';
import type { Solvent, SolventLimit } from '../materials/types.ts';
import { middle } from './recipe.ts';
import { LIKE_TURPENTINE } from './settings.ts';
import { ppmToMgPerM3 } from './vapour.ts';

/** In mg/m³; undefined where the limit is in ppm of something without a molar mass. */
function inMg({ ppm, mgPerM3 }: SolventLimit, { molarMass }: Solvent): number | undefined {
  if (mgPerM3 !== undefined) return mgPerM3;
  return ppm === undefined || !molarMass ? undefined : ppmToMgPerM3(ppm, middle(molarMass));
}

export interface RankedLimit extends SolventLimit {
  /** mg/m³, above 0 */
  readonly mg: number;
}

const ranked = (solvent: Solvent, counts: (hours: number) => boolean): readonly RankedLimit[] =>
  solvent.limits
    .flatMap((l) => {
      const mg = counts(l.hours) ? inMg(l, solvent) : undefined;
      return mg !== undefined && mg > 0 ? [{ ...l, mg }] : [];
    })
    .sort((a, b) => a.mg - b.mg);

/** Averages over a working day, the strictest first. */
export const dayLimits = (solvent: Solvent): readonly RankedLimit[] => ranked(solvent, (h) => h >= 8);

/** What may not be passed over a quarter of an hour, the strictest first. */
export const quarterLimits = (solvent: Solvent): readonly RankedLimit[] => ranked(solvent, (h) => h < 8);

/** `NIOSH, 8–10 h`: NIOSH means its limits for days of up to ten hours. */
export const limitName = ({ whose, hours }: SolventLimit): string =>
  `${whose}, ${hours < 1 ? `${hours * 60} min` : hours > 8 ? `8–${hours} h` : `${hours} h`}`;

export interface CountedLimit {
  readonly limit: RankedLimit;
  /** true where no list names the solvent and another's limit stands in */
  readonly standIn: boolean;
}

/** The limit of a working day that counts: the solvent's own strictest, else that of turpentine. */
export function countedLimit(solvent: Solvent): CountedLimit | undefined {
  const [own] = dayLimits(solvent);
  if (own) return { limit: own, standIn: false };
  const like = solventNamed(LIKE_TURPENTINE);
  const [other] = like ? dayLimits(like) : [];
  return other && { limit: other, standIn: true };
}
