import type { Rule } from '../rule.ts';
import { label, languageReference, listed, quoted } from '../shared/words.ts';

/** A cross-section that shows a layer where the record says it does not lie. */
export const sampleWrongArea: Rule = {
  id: 'sample-wrong-area',
  title: 'Sample shows a layer where it should not be',
  theme: 'records',
  severity: 'warning',
  why: 'A sample taken in one area and a layer said to lie only on others contradict each other: either the layer reaches further, or the sample or the layer is named wrongly.',
  whatToDo: 'Let the layer lie on that area too, or correct the sample.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['record'],
  *check(plan) {
    for (const sample of plan.samples) {
      const where = sample.in;
      if (!where?.known) continue;
      for (const row of sample.layers) {
        const layer = row.layer.is;
        if (!layer || layer.areas.some((a) => where.areas.includes(a))) continue;
        yield {
          message: `Sample ${quoted(sample.name)} was taken in ${quoted(where.name)} and shows ${label(layer)}, which the record lays on ${listed(layer.areas.map(quoted)) || 'no area'} only. Let the layer reach there, or correct the sample.`,
          place: row.layer.place,
          related: [{ message: `${label(layer)} is said to lie elsewhere`, place: layer.namePlace }],
        };
      }
    }
  },
};
