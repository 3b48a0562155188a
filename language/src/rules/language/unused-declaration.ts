import type { Declared } from '../../plan/plan.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** Paints, mediums, mixes, pigments, areas and groups that nothing uses. A palette is there to be used by others. */
export const unusedDeclaration: Rule = {
  id: 'unused-declaration',
  title: 'Declared but not used',
  theme: 'language',
  severity: 'hint',
  why: 'A paint or medium that no layer uses costs nothing, but may be a slip of a name elsewhere.',
  whatToDo: 'Use it, or take it out.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record'],
  *check(plan) {
    // paints are written before layers: while there are none, nothing can be used yet
    if (plan.layers.length === 0) return;
    const used = new Set(plan.names.flatMap((n) => (n.target ? [n.target.start] : [])));
    const unused = function* (kind: string, list: readonly Declared[]): Generator<RuleReport> {
      for (const d of list)
        if (!used.has(d.namePlace.start))
          yield {
            message: `No layer uses the ${kind} ${quoted(d.name)}.`,
            place: d.namePlace,
            unnecessary: true,
          };
    };
    yield* unused('pigment', plan.pigments);
    yield* unused('paint', plan.paints);
    yield* unused('medium', plan.mediums);
    yield* unused('mix', plan.mixes);
    yield* unused('group', plan.groups);
  },
};
