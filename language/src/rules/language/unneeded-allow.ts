import type { Rule } from '../rule.ts';
import { languageReference } from '../shared/words.ts';

/** An `allow` that silences nothing. It is found where the rules are run (check.ts), after all of them. */
export const unneededAllow: Rule = {
  id: 'unneeded-allow',
  title: 'Allow that silences nothing',
  theme: 'language',
  severity: 'warning',
  why: 'An allow stays behind when what it excused is gone. It would then hide the next fault of the same kind.',
  whatToDo: 'Take it out.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  check: () => [],
};
