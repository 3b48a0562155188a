import type { Rule } from './rule.ts';
import { languageReference } from './words.ts';

/** `allow` with a rule that does not exist. It is found where the rules are run (check.ts). */
export const unknownRule: Rule = {
  id: 'unknown-rule',
  title: 'Allow of a rule that does not exist',
  severity: 'warning',
  why: 'An allow names the rule it silences. A name that is no rule silences nothing.',
  whatToDo: 'Correct the name; the rule of each finding stands beside it.',
  sources: [languageReference],
  appliesTo: ['plan', 'record', 'palette'],
  check: () => [],
};
