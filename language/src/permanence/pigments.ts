/** Which pigments a layer holds, whether or not its proportions are known. */
import type { Interval } from '../materials/interval.ts';
import type { Pigment } from '../materials/types.ts';
import type { Formula, Mix, Paint } from '../plan/plan.ts';
import type { LayerStudy } from '../results/study.ts';

export interface PigmentIn {
  readonly pigment: Pigment;
  /** of the dry film; absent where a record names no amounts */
  readonly volumeFraction?: Interval;
}

/** Every pigment named in a layer's formula, mixes and paints opened; each is opened once, so circles end. */
export function formulaPigments({ layer: { colour } }: LayerStudy): readonly Pigment[] {
  if (colour?.kind !== 'formula') return [];
  const pigments = new Set<Pigment>();
  const opened = new Set<Mix | Paint>();
  const waiting: (Formula | undefined)[] = [colour.formula];
  for (let i = 0; i < waiting.length; i++)
    for (const { ingredient } of waiting[i]?.parts ?? []) {
      const { is } = ingredient;
      if (is.kind === 'pigment') pigments.add(is.pigment);
      const inside = is.kind === 'paint' ? is.paint : is.kind === 'mix' ? is.mix : undefined;
      if (inside && !opened.has(inside)) {
        opened.add(inside);
        waiting.push(inside.formula);
      }
    }
  return [...pigments];
}

/** The pigments of a layer, in the order of its composition, else of its formula. */
export const layerPigments = (study: LayerStudy): readonly PigmentIn[] =>
  study.composition?.pigments ?? formulaPigments(study).map((pigment) => ({ pigment }));
