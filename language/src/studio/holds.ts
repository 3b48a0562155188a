/** Which pigments a layer holds, whether or not its proportions are known. */
import type { Pigment } from '../materials/types.ts';
import type { Formula, Mix, Paint } from '../plan/plan.ts';
import type { LayerStudy } from '../results/study.ts';

/** Every pigment named in a layer's formula. Each mix or paint is opened once, so circles end. */
export function pigmentsIn({ layer }: LayerStudy): readonly Pigment[] {
  if (layer.colour?.kind !== 'formula') return [];
  const pigments = new Set<Pigment>();
  const opened = new Set<Mix | Paint>();
  const waiting: (Formula | undefined)[] = [layer.colour.formula];
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
