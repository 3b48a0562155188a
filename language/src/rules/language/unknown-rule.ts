import type { Rule } from '../rule.ts';
import { languageReference } from '../shared/words.ts';

/** `allow` with a rule that does not exist. It is found where the rules are run (check.ts). */
export const unknownRule: Rule = {
  id: 'unknown-rule',
  title: 'Allow of a rule that does not exist',
  theme: 'language',
  severity: 'warning',
  why: 'An allow names the rule it silences. A name that is no rule silences nothing.',
  whatToDo: 'Correct the name; the rule of each finding stands beside it.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  check: () => [],
};
