/** Every source a study rests on, once each. */

import { sets } from '../drying/base.ts';
import { ALKYD, OPEN, Q10, READY, SETTING } from '../drying/settings.ts';
import { dryingFactorsSource } from '../materials/drying-classes.ts';
import type { Binder, Source } from '../materials/types.ts';
import type { Study } from '../results/study.ts';
import { PASTE_SOURCE } from './defaults.ts';

const CPVC: Source = {
  text: 'critical pigment volume concentration from oil absorption: Asbeck & Van Loo, Ind. Eng. Chem. 41 (1949) 1470; rub-out by ASTM D281',
  mark: 'second-hand',
};
export function sourcesOf(study: Study, binder: (id: string) => Binder | undefined): readonly Source[] {
  const byText = new Map<string, Source>();
  const add = (...sources: readonly (Source | undefined)[]): void => {
    for (const s of sources) if (s) byText.set(`${s.mark} ${s.text}`, s);
  };
  const pigments = new Set(study.layers.flatMap((l) => l.composition?.pigments.map((p) => p.pigment) ?? []));
  const binders = new Set(study.layers.flatMap((l) => l.composition?.binders.map((b) => b.binder) ?? []));
  if (pigments.size > 0) add(CPVC);
  for (const p of pigments) add(p.density.source, p.oilAbsorption.source, p.drying.source);
  const pastesAssumed = study.layers.some((l) => l.assumptions.some((a) => a.source === PASTE_SOURCE));
  if (pastesAssumed) for (const p of pigments) add(p.paste?.source);
  for (const id of binders) {
    const b = binder(id);
    add(b?.density.source, b?.touchDry?.source);
    if (b && sets(b)) add(SETTING.source);
    if (b?.kind === 'alkyd') add(ALKYD.source, b.solids.source);
  }
  if (study.layers.some((l) => l.drying)) add(dryingFactorsSource, Q10.source, OPEN.source, READY.source);
  for (const l of study.layers) {
    const material = l.layer.material?.is;
    if (material) add(material.source, material.ready.source);
  }
  for (const a of [...study.assumptions, ...study.layers.flatMap((l) => l.assumptions)]) add(a.source);
  for (const p of study.permanence) add(p.source);
  for (const c of study.cautions) add(c.source);
  for (const s of study.air?.solvents ?? []) if (s.limit) add({ text: s.limit.source, mark: 'published' });
  return [...byText.values()];
}
