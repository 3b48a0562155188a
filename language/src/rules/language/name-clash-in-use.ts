import type { Rule } from '../rule.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** A name of this file, or of one used file, that hides the same name of another. */
export const nameClashInUse: Rule = {
  id: 'name-clash-in-use',
  title: 'Name also in a used file',
  theme: 'language',
  severity: 'warning',
  why: 'A used file brings in all its names. Where one is taken already, the nearer one is meant, and a reader may think of the other.',
  whatToDo: 'Rename one of the two.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const c of plan.clashes) {
      if (!c.fromUse) continue;
      yield {
        message: `${quoted(c.name)} is also a ${c.kind} of a used file; that one is hidden.`,
        place: c.again,
        related: [{ message: `the hidden ${c.kind} ${quoted(c.name)}`, place: c.first }],
      };
    }
  },
};
