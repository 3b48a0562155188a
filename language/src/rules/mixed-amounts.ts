import { formulas } from './ingredients.ts';
import type { Rule } from './rule.ts';
import { languageReference, quoted } from './words.ts';

/** Parts, per cent, grams and millilitres in one formula. */
export const mixedAmounts: Rule = {
  id: 'mixed-amounts',
  title: 'Amounts of different kinds',
  severity: 'error',
  why: 'Parts, per cent, grams and millilitres cannot be added up. One formula keeps to one of them.',
  whatToDo: 'Write all amounts in the same kind.',
  sources: [languageReference],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const { value: f, layer, name } of formulas(plan)) {
      if (f.amounts !== 'mixed') continue;
      const kinds = [...new Set(f.parts.map((p) => p.amount?.kind ?? 'no amount at all'))];
      yield {
        message: `${quoted(name)} mixes amounts in ${kinds.join(', ')}: write all of them in one kind.`,
        place: f.place,
        layer,
      };
    }
  },
};
