import { materialNames } from '../../materials/catalogue.ts';
import type { NameUse } from '../../plan/plan.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { replaceEach } from '../shared/fixes.ts';
import { languageReference, quoted, thereIs } from '../shared/words.ts';

type What = 'support' | 'binder' | 'resin' | 'material' | 'agent';
const role = (what: What) => (what === 'material' ? 'ground' : what);

/** A binder, resin, support, ground, preparation agent that no table has. */
export const unknownMaterial: Rule = {
  id: 'unknown-material',
  title: 'Material not in the catalogue',
  theme: 'language',
  severity: 'error',
  why: 'Oils, resins, solvents, supports and grounds are named by their common trade names, and their figures come from tables. What is not in a table cannot be computed with.',
  whatToDo: 'Use the nearest name of the catalogue; paintplan explain NAME tells what a name stands for.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    const unknown = (
      what: What,
      use: (NameUse & { readonly near?: readonly string[] }) | undefined,
      layer?: number,
    ): RuleReport[] =>
      use
        ? [
            {
              message: `I know no ${what} ${quoted(use.name)}.${thereIs(use.name, materialNames(role(what)), use.near)}`,
              place: use.place,
              layer,
              fixes: replaceEach('Change to', use.place, use.near),
            },
          ]
        : [];
    const material = plan.support?.material;
    if (material && !material.is) yield* unknown('support', material);
    for (const p of plan.paints) if (p.binder && !p.binder.is) yield* unknown('binder', p.binder);
    for (const l of plan.layers) {
      if (l.resin && !l.resin.is) yield* unknown('resin', l.resin, l.index);
      if (l.material && !l.material.is) yield* unknown('material', l.material, l.index);
      for (const p of l.prepare) if (p.agent && !p.agent.is) yield* unknown('agent', p.agent, l.index);
    }
  },
};
