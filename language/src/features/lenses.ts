/** Lines above declarations: when a layer is ready and how fat it is; how many layers use a paint. */
import type { Place, Plan } from '../plan/plan.ts';
import type { Study } from '../results/study.ts';
import { clocksWords } from '../studio/words.ts';
import { fatness } from './figures.ts';

export interface Lens {
  readonly place: Place;
  readonly text: string;
}

export function lenses(plan: Plan, study: Study): Lens[] {
  const last = new Map(study.calendar.entries.map((e) => [e.index, e]));
  const layers = study.layers.flatMap((l): Lens[] => {
    const entry = last.get(l.layer.index);
    const words = [
      ...(l.composition ? [`fatness ${fatness(l.composition.fatness)}`] : []),
      ...(entry && plan.kind === 'plan'
        ? [`${entry.notKnown ? 'its day is ' : ''}${clocksWords(entry, study.calendar.dated)}`]
        : []),
    ];
    return words.length > 0 ? [{ place: l.layer.namePlace, text: words.join(' · ') }] : [];
  });
  const uses = new Map<number, number>();
  for (const r of plan.names)
    if (r.target?.uri === plan.uri) uses.set(r.target.start, (uses.get(r.target.start) ?? 0) + 1);
  const used = [...plan.paints, ...plan.mediums, ...plan.mixes].map((d): Lens => {
    const n = uses.get(d.namePlace.start) ?? 0;
    return { place: d.namePlace, text: n === 0 ? 'not used' : `used ${n} time${n === 1 ? '' : 's'}` };
  });
  return [...used, ...layers];
}
