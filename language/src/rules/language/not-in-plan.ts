import type { Rule } from '../rule.ts';
import { takeOut } from '../shared/fixes.ts';
import { ingredients } from '../shared/ingredients.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** Fields and declarations that only a record has. */
export const notInPlan: Rule = {
  id: 'not-in-plan',
  title: 'Belongs in a record',
  theme: 'language',
  severity: 'error',
  why: 'A plan says what is to be done; evidence, samples and unknown materials belong to the record of a painting that exists.',
  whatToDo: 'Take it out, or make the file a record.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan'],
  *check(plan) {
    for (const p of plan.paints)
      if (p.unknown)
        yield {
          message: `Only a record may say unknown: a plan decides what ${quoted(p.name)} is made of, for instance paint ${p.name} = PY43 in linseed.`,
          place: p.unknown,
        };
    const unknown = [...plan.visible.paints.values()].some((p) => p.unknown && p.namePlace.uri !== plan.uri);
    for (const { ingredient, layer } of unknown ? ingredients(plan, 'paint') : [])
      if (
        ingredient.is.kind === 'paint' &&
        ingredient.is.paint.unknown &&
        ingredient.is.paint.namePlace.uri !== plan.uri
      )
        yield {
          message: `Nobody knows what ${quoted(ingredient.name)} is made of: only a record may use it.`,
          place: ingredient.place,
          layer,
        };
    for (const s of plan.samples)
      yield {
        message: 'A sample belongs in a record, not in a plan.',
        place: s.namePlace,
        fixes: [takeOut('Take the sample out', plan, s.place)],
      };
    if (plan.made) yield { message: '‘made’ belongs in a record, not in a plan.', place: plan.made.place };
  },
  *checkLayer({ layer: l }, others) {
    for (const f of l.fields)
      if (f.misplaced === 'not-in-plan')
        yield {
          message: `${quoted(f.name)} belongs in a record, not in a plan.`,
          place: f.place,
          layer: l.index,
          fixes: [takeOut('Take it out', others().plan, f.place)],
        };
    if (l.kind === 'retouching' || l.kind === 'deposit')
      yield {
        message: `A ${l.kind} belongs in a record, not in a plan.`,
        place: l.kindPlace,
        layer: l.index,
      };
    if (l.colour?.kind === 'unknown')
      yield {
        message: 'Only a record may say unknown: a plan decides on its colour.',
        place: l.colour.place,
        layer: l.index,
      };
    if (l.film?.given === 'unknown')
      yield {
        message:
          'Only a record may say unknown. Give a thickness, or leave film out: a default is then taken and told.',
        place: l.film.place,
        layer: l.index,
        fixes: l.fields
          .filter((f) => f.name === 'film')
          .slice(0, 1)
          .map((f) => takeOut('Leave film out', others().plan, f.place)),
      };
  },
};
