import type { NameUse } from '../plan/plan.ts';
import { replaceEach } from './fixes.ts';
import { ingredients } from './ingredients.ts';
import type { Report, Rule } from './rule.ts';
import { didYouMean, languageReference, quoted } from './words.ts';

/** A name that is declared nowhere, or declared as something that cannot stand where it is used. */
export const unknownName: Rule = {
  id: 'unknown-name',
  title: 'Name not declared',
  severity: 'error',
  why: 'A plan computes only with what it declares: paints, mediums, mixes, areas and layers. A name that is declared nowhere is mostly a slip of the pen.',
  whatToDo: 'Correct the name, declare it, or bring it in with use.',
  sources: [languageReference],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    const unknown = (
      what: string,
      use: NameUse & { readonly near?: readonly string[] },
      layer?: number,
    ): Report => ({
      message: `There is no ${what} ${quoted(use.name)} here.${didYouMean(use.near)}`,
      place: use.place,
      layer,
      fixes: replaceEach('Change to', use.place, use.near),
    });
    for (const { ingredient, layer } of ingredients(plan)) {
      if (ingredient.is.kind === 'unknown-name')
        yield unknown('paint, mix or material', { ...ingredient, near: ingredient.is.near }, layer);
      if (ingredient.is.kind === 'misplaced')
        yield {
          message: `${quoted(ingredient.name)} is ${ingredient.is.found}; here stands ${ingredient.is.expected}.`,
          place: ingredient.place,
          layer,
        };
    }
    for (const g of plan.groups) for (const m of g.members) if (!m.known) yield unknown('area', m);
    for (const t of plan.targets) if (t.in && !t.in.known) yield unknown('area', t.in);
    for (const s of plan.samples) {
      if (s.in && !s.in.known) yield unknown('area', s.in);
      for (const row of s.layers) if (!row.layer.is) yield unknown('layer', row.layer);
    }
    for (const l of plan.layers) {
      for (const a of [
        ...l.on,
        ...l.except,
        ...l.wipeOut,
        ...l.measured.flatMap((m) => (m.in ? [m.in] : [])),
      ])
        if (!a.known) yield unknown('area', a, l.index);
      if (l.medium?.of && !l.medium.of.is) yield unknown('medium', l.medium.of, l.index);
    }
  },
};
