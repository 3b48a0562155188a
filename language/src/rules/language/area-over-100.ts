import type { Rule } from '../rule.ts';
import { figure, languageReference, quoted } from '../shared/words.ts';

/** Areas that together are larger than the picture. */
export const areaOver100: Rule = {
  id: 'area-over-100',
  title: 'Areas larger than the picture',
  theme: 'language',
  severity: 'error',
  why: 'Areas are shares of the support and do not overlap. Together they cannot be more than all of it.',
  whatToDo: 'Make some of them smaller, or name what lies on several areas with a group.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record'],
  *check(plan) {
    // a single share above all of it is another rule's
    if (plan.implicitArea || plan.areas.some((a) => (a.share?.value.high ?? 0) > 1)) return;
    const sum = plan.areas.reduce((s, a) => s + (a.share?.value.low ?? 0), 0);
    const last = plan.areas.at(-1);
    if (sum > 1.0005 && last)
      yield {
        message: `The areas add up to ${figure(sum * 100)} % of the picture. The last one, ${quoted(last.name)}, leads over 100 %. Make some smaller, or let layers lie on several areas through a group.`,
        place: last.namePlace,
      };
  },
};
