import { sampleConflicts } from '../../studio/samples.ts';
import type { Rule } from '../rule.ts';
import { listed, practice, quoted } from '../shared/words.ts';

/** Cross-sections that contradict one another, or the order of the record. */
export const sampleOrderConflict: Rule = {
  id: 'sample-order-conflict',
  title: 'Samples contradict the order of layers',
  theme: 'records',
  severity: 'warning',
  why: 'A layer cannot lie both above and below another. Where two cross-sections say so, or one contradicts the order in which the record lists its layers, one observation or one name is wrong.',
  whatToDo:
    'Look at the cross-sections again: two layers may have been taken for one, or one layer was laid in parts. Correct the sample or the order of the layers.',
  sources: [practice('layers of several cross-sections must fit into one sequence')],
  restsOn: [],
  appliesTo: ['record'],
  *check(plan) {
    for (const { against, chain, evidence } of sampleConflicts(plan)) {
      const inText = evidence.toSorted((a, b) => a.place.start - b.place.start);
      const last = inText.at(-1);
      if (!last) continue;
      const cycle = chain.map(quoted).join(' under ');
      const samples = [...new Set(inText.map((e) => e.sample))];
      const message =
        against === 'samples'
          ? samples.length > 1
            ? `Samples ${listed(samples)} contradict one another: ${cycle}. One of them has a layer wrong, or two layers share a name.`
            : `Sample ${last.sample} contradicts itself: ${cycle}. A layer laid twice wants two names.`
          : `Sample ${last.sample} has ${quoted(last.upper)} on ${quoted(last.lower)}; the record lists ${quoted(last.upper)} below. Correct the sample, or move the layer.`;
      const upper = plan.layers.find((l) => l.name === last.upper);
      yield {
        message,
        place: last.place,
        layer: upper?.index,
        related: [
          ...inText.slice(0, -1).map((e) => ({
            message: `${e.sample}: ${quoted(e.upper)} on ${quoted(e.lower)}`,
            place: e.place,
          })),
          ...(against === 'record' && upper
            ? [{ message: `${quoted(upper.name)} stands here in the record`, place: upper.namePlace }]
            : []),
        ],
      };
    }
  },
};
