import { FILE_ENDING } from '../../plan/names.ts';
import type { Rule } from '../rule.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** A path that leads out of the folders that were opened. */
export const useOutsideWorkspace: Rule = {
  id: 'use-outside-workspace',
  title: 'Used file out of reach',
  theme: 'language',
  severity: 'error',
  why: 'A plan reads only files below the opened folder, so that a plan from someone else cannot reach the rest of the disk.',
  whatToDo: 'Copy the file next to the plan, or open the folder that holds both.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const u of plan.uses)
      if (u.status === 'outside')
        yield {
          message: u.path.endsWith(FILE_ENDING)
            ? `${quoted(u.path)} lies outside the opened folder and is not read. Copy it next to the plan, or open the folder that holds both.`
            : `${quoted(u.path)} is not read: only files named …${FILE_ENDING} inside the opened folder are.`,
          place: u.pathPlace,
        };
  },
};
