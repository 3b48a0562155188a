import type { Rule } from '../rule.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** A mix or medium that contains itself, through others. */
export const circularMix: Rule = {
  id: 'circular-mix',
  title: 'Mixture made of itself',
  theme: 'language',
  severity: 'error',
  why: 'A mix that, through others, contains itself can never be mixed.',
  whatToDo: 'Take one of the steps out of the circle.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const c of plan.circles)
      yield {
        message: `${quoted(c.names[0] ?? '')} is made of itself: ${c.names.join(' → ')}.`,
        place: c.place,
      };
  },
};
