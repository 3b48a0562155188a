import type { Rule } from '../rule.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** Files that use one another in a circle. */
export const useCycle: Rule = {
  id: 'use-cycle',
  title: 'Files use one another in a circle',
  theme: 'language',
  severity: 'error',
  why: 'A file that, through others, uses itself has no beginning. The last step of the circle is left out.',
  whatToDo: 'Move what both need into a third file that uses neither.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const u of plan.uses)
      if (u.status === 'cycle')
        yield {
          message: `${quoted(u.path)} leads back to where it started: ${u.detail ?? u.path}.`,
          place: u.pathPlace,
        };
  },
};
