import type { Rule } from '../rule.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** The same name declared twice in one file. */
export const duplicateName: Rule = {
  id: 'duplicate-name',
  title: 'Name declared twice',
  theme: 'language',
  severity: 'error',
  why: 'Where two things share a name, nobody can tell which one a layer means. The first one is taken.',
  whatToDo: 'Give one of them another name.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const c of plan.clashes) {
      if (c.fromUse) continue;
      yield {
        message: `There is a ${quoted(c.name)} already. Give this ${c.kind} another name.`,
        place: c.again,
        related: [{ message: `${quoted(c.name)} is declared here first`, place: c.first }],
      };
    }
  },
};
