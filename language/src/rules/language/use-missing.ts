import type { Rule } from '../rule.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** A used file that is not there or cannot be read. */
export const useMissing: Rule = {
  id: 'use-missing',
  title: 'Used file cannot be read',
  theme: 'language',
  severity: 'error',
  why: 'Paints and mediums of a used file are missing without it. The path is read from the folder of this file.',
  whatToDo: 'Correct the path, or put the file where the path says.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const u of plan.uses) {
      if (u.beyond)
        yield {
          message: `Behind ${quoted(u.path)}, ${quoted(u.beyond.path)} is left out: ${u.beyond.detail}.`,
          place: u.pathPlace,
        };
      const because = {
        missing: 'there is no such file',
        unreadable: 'it is not read',
        'too-large': 'it is too large to be a palette',
      };
      if (u.status !== 'missing' && u.status !== 'unreadable' && u.status !== 'too-large') continue;
      yield {
        message: `${quoted(u.path)} is left out: ${because[u.status]}${u.detail ? ` (${u.detail})` : ''}.`,
        place: u.pathPlace,
      };
    }
  },
};
