import type { Ingredient } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { replaceEach } from '../shared/fixes.ts';
import { ingredients } from '../shared/ingredients.ts';
import { didYouMean, published, quoted } from '../shared/words.ts';

/** A word written like a Colour Index name that the catalogue does not have. */
export const unknownPigment: Rule = {
  id: 'unknown-pigment',
  title: 'Pigment not in the catalogue',
  theme: 'language',
  severity: 'error',
  why: 'A pigment is named by its Colour Index generic name, so that everyone means the same thing. Without its figures neither oil nor drying nor colour can be computed.',
  whatToDo: 'Correct the code, or declare the pigment yourself: pigment my-colour like PY43 { … }.',
  sources: [published('Colour Index International, generic names')],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const { ingredient, layer } of ingredients(plan, 'unknown-pigment')) {
      const is: Ingredient['is'] = ingredient.is;
      if (is.kind !== 'unknown-pigment') continue;
      yield {
        message: `I know no pigment ${quoted(ingredient.name)}.${didYouMean(is.near)}`,
        place: ingredient.place,
        layer,
        fixes: replaceEach('Change to', ingredient.place, is.near),
      };
    }
  },
};
