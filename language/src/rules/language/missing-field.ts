import type { Place, Plan } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { addFields, replace } from '../shared/fixes.ts';
import { labelAtStart, languageReference, quoted } from '../shared/words.ts';

/** Where the first declaration begins: in a note that is inside the fence, not at the top of the file. */
function beginning(plan: Plan): Place {
  const all: readonly (Place | undefined)[] = [
    plan.support?.place,
    plan.studio.place,
    ...[
      ...plan.pigments,
      ...plan.paints,
      ...plan.mediums,
      ...plan.mixes,
      ...plan.groups,
      ...plan.layers,
      ...plan.uses,
    ].map((d) => d.place),
    ...(plan.implicitArea ? [] : plan.areas.map((a) => a.place)),
  ];
  const start = all.reduce((least, place) => Math.min(least, place?.start ?? least), Number.MAX_SAFE_INTEGER);
  return { uri: plan.uri, start, end: start };
}

/** What a declaration cannot do without. */
export const missingField: Rule = {
  id: 'missing-field',
  title: 'Something necessary is missing',
  theme: 'language',
  severity: 'error',
  why: 'Most fields have a sensible default. Without these there is nothing to compute with.',
  whatToDo: 'Write the missing part.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    if (plan.kind === 'palette' && plan.layers.length > 0) {
      const head = beginning(plan);
      yield {
        message: 'A file with layers says first what it is: plan "…" or record "…".',
        place: head,
        fixes: [
          {
            title: 'Begin with a plan',
            edits: [{ place: head, text: 'plan "Untitled"\n' }],
          },
        ],
      };
    }
    for (const a of plan.areas)
      if (!plan.implicitArea && !a.share && plan.kind === 'plan')
        yield {
          message: `Area ${quoted(a.name)} has no share of the picture, so no amounts can be told for it: area ${a.name} 20 %.`,
          place: a.namePlace,
          severity: 'info',
        };
    for (const p of plan.pigments)
      if (!p.like)
        yield {
          message: `Pigment ${quoted(p.name)} must say what it is like: pigment ${p.name} like PY43.`,
          place: p.namePlace,
        };
  },
  *checkLayer({ layer: l }, _others, plan) {
    if (l.medium && !l.medium.share && plan.kind === 'plan')
      yield {
        message: `${labelAtStart(l)} does not say how much medium: medium 20 % ${l.medium.of?.name ?? 'name'}.`,
        place: l.medium.place,
        layer: l.index,
        fixes: l.medium.of
          ? [replace('Write 25 %', { ...l.medium.of.place, end: l.medium.of.place.start }, '25 % ')]
          : [],
      };
    if (l.kind === 'varnish' && !l.resin && !l.material && !l.colour && plan.kind === 'plan')
      yield {
        message: `${labelAtStart(l)} does not say what it is made of: resin damar.`,
        place: l.namePlace,
        layer: l.index,
        severity: 'warning',
        fixes: addFields('Add resin damar', l, ['resin damar']),
      };
  },
};
