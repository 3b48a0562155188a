import type { Rule } from '../rule.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** An area on which no layer lies but those that lie everywhere. */
export const areaUnpainted: Rule = {
  id: 'area-unpainted',
  title: 'Area that nothing is painted on',
  theme: 'language',
  severity: 'hint',
  why: 'An area that no layer names shows the ground or the tone that lies everywhere. That may be meant, or forgotten.',
  whatToDo: 'Name the area after on in a layer, or take it out.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan'],
  *check(plan) {
    if (plan.implicitArea || plan.layers.length === 0) return;
    const painted = new Set(
      plan.layers
        .filter((l) => !['size', 'ground', 'drawing', 'varnish'].includes(l.kind))
        .flatMap((l) => l.areas),
    );
    for (const a of plan.areas)
      if (!painted.has(a.name))
        yield {
          message: `Nothing is painted on ${quoted(a.name)}. Name it after on in a layer, or leave it out.`,
          place: a.namePlace,
        };
  },
};
