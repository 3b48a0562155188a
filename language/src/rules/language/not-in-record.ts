import type { Rule } from '../rule.ts';
import { takeOut } from '../shared/fixes.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** Fields and declarations that only a plan has. */
export const notInRecord: Rule = {
  id: 'not-in-record',
  title: 'Belongs in a plan',
  theme: 'language',
  severity: 'error',
  why: 'A record says what was found. Waiting times, preparations, targets and the studio belong to the plan of a painting to be made.',
  whatToDo: 'Take it out, or make the file a plan.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['record'],
  *check(plan) {
    if (plan.studio.place)
      yield {
        message: '‘studio’ belongs in a plan, not in a record.',
        place: plan.studio.place,
        fixes: [takeOut('Take the studio out', plan, plan.studio.place)],
      };
    if (plan.start) yield { message: '‘start’ belongs in a plan, not in a record.', place: plan.start.place };
    for (const t of plan.targets)
      yield {
        message: 'A target belongs in a plan, not in a record.',
        place: t.place,
        fixes: [takeOut('Take the target out', plan, t.place)],
      };
  },
  *checkLayer({ layer }, others) {
    for (const f of layer.fields)
      if (f.misplaced === 'not-in-record')
        yield {
          message: `${quoted(f.name)} belongs in a plan, not in a record.`,
          place: f.place,
          layer: layer.index,
          fixes: [takeOut('Take it out', others().plan, f.place)],
        };
  },
};
