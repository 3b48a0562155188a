import type { Rule } from '../rule.ts';
import { replace } from '../shared/fixes.ts';
import { ingredients } from '../shared/ingredients.ts';
import { listed, published, quoted } from '../shared/words.ts';

/** One Colour Index name covers several earths; the second word tells which. */
export const pigmentNeedsVariety: Rule = {
  id: 'pigment-needs-variety',
  title: 'The code alone does not tell the pigment',
  theme: 'language',
  severity: 'error',
  why: 'PBr7 is raw and burnt sienna, raw and burnt umber: they differ in colour, in the oil they take and in how fast they dry. A second word says which one is meant.',
  whatToDo: 'Write the variety after the code, for instance PBr7 burnt-sienna.',
  sources: [published('Colour Index International: PBr7 covers natural iron oxides of several kinds')],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const { ingredient, layer } of ingredients(plan, 'needs-variety')) {
      if (ingredient.is.kind !== 'needs-variety') continue;
      const { choices } = ingredient.is;
      const place = { ...ingredient.place, end: ingredient.variety?.place.end ?? ingredient.place.end };
      const said = ingredient.variety
        ? `${quoted(ingredient.name)} has no variety ${quoted(ingredient.variety.name)}`
        : `${quoted(ingredient.name)} is several pigments`;
      yield {
        message: `${said}: write ${listed(
          choices.map((c) => c.id),
          'or',
        )}.`,
        place,
        layer,
        fixes: choices.map((c) => replace(`Write ${c.id}`, place, c.id)),
      };
    }
  },
};
