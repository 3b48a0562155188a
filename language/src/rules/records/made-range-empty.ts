import type { Layer, YearRange } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { label, labelAtStart, practice, quoted } from '../shared/words.ts';

const years = ({ from, to }: YearRange): string => (from === to ? String(from) : `${from} to ${to}`);

/** What may be added to a painting long after it was made. */
const LATER: readonly Layer['kind'][] = ['retouching', 'deposit', 'varnish', 'leaf'];

/** Years that leave none in which a layer could have been laid. */
export const madeRangeEmpty: Rule = {
  id: 'made-range-empty',
  title: 'No year left for a layer',
  theme: 'records',
  severity: 'error',
  why: 'A layer is no older than what lies beneath it, and no part of a painting is older than its beginning. Years that run backwards, or leave none in common, are slips or a finding to look into.',
  whatToDo: 'Correct the years, or move the layer to where it belongs.',
  sources: [practice('a layer is younger than those it lies on')],
  restsOn: [],
  appliesTo: ['record'],
  *check(plan) {
    const { made } = plan;
    if (made && made.from > made.to)
      yield {
        message: `‘made’ runs backwards: ${made.from} is after ${made.to}. Write ${made.to}..${made.from}.`,
        place: made.place,
        fixes: backwards(made),
      };
    // the oldest that the layers on an area so far can be
    const oldest = new Map<string, { readonly from: number; readonly layer: Layer }>();
    for (const layer of plan.layers) {
      const own = layer.made;
      if (!own) continue;
      if (own.from > own.to) {
        yield {
          message: `‘made’ of ${label(layer)} runs backwards: ${own.from} is after ${own.to}. Write ${own.to}..${own.from}.`,
          place: own.place,
          layer: layer.index,
          fixes: backwards(own),
        };
        continue;
      }
      const below = layer.areas
        .map((a) => oldest.get(a))
        .filter((x) => x !== undefined)
        .sort((a, b) => b.from - a.from)[0];
      if (below && below.from > own.to)
        yield {
          message: `${labelAtStart(layer)}, made ${years(own)}, lies on ${quoted(below.layer.name)}, which is no older than ${below.from}: no year is left for it.`,
          place: own.place,
          layer: layer.index,
          related: below.layer.made
            ? [
                {
                  message: `${quoted(below.layer.name)}, made ${years(below.layer.made)}`,
                  place: below.layer.made.place,
                },
              ]
            : [],
        };
      else if (made && made.from <= made.to && own.to < made.from)
        yield {
          message: `${labelAtStart(layer)}, made ${years(own)}, would be older than the painting (made ${years(made)}).`,
          place: own.place,
          layer: layer.index,
          severity: 'warning',
          related: [{ message: `made ${years(made)}`, place: made.place }],
        };
      else if (made && made.from <= made.to && own.from > made.to && !LATER.includes(layer.kind))
        yield {
          message: `${labelAtStart(layer)}, made ${years(own)}, would be later than the painting (made ${years(made)}). If it was added later, it is a retouching.`,
          place: own.place,
          layer: layer.index,
          severity: 'info',
          related: [{ message: `made ${years(made)}`, place: made.place }],
        };
      for (const a of layer.areas)
        if ((oldest.get(a)?.from ?? -Infinity) < own.from) oldest.set(a, { from: own.from, layer });
    }
  },
};

const backwards = ({ from, to, place }: YearRange) => [
  { title: `Write ${to}..${from}`, edits: [{ place, text: `${to}..${from}` }] },
];
