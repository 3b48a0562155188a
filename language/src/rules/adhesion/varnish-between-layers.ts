import type { Rule } from '../rule.ts';
import { coveredBy } from '../shared/films.ts';
import { label, labelAtStart, practice } from '../shared/words.ts';

/** A soluble film with paint on it. */
export const varnishBetweenLayers: Rule = {
  id: 'varnish-between-layers',
  title: 'Varnish between the layers',
  theme: 'adhesion',
  severity: 'warning',
  why: 'A varnish is made to be taken off again. What is painted on it goes with it at the first cleaning, and until then it does not grip well.',
  whatToDo: 'Varnish last. To bring sunken darks back while painting, oil out to a breath and paint into it.',
  sources: [practice('varnish is the last layer and can be taken off')],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (l.layer.kind !== 'varnish') return;
    const upper = coveredBy(
      others(),
      l.layer,
      (u) => !['varnish', 'retouching', 'deposit'].includes(u.layer.kind),
    );
    if (!upper) return;
    yield {
      message: `${labelAtStart(l.layer)} lies under ${label(upper.layer)}: at the first cleaning the paint above goes with it. Varnish last; oil out instead where darks have sunk.`,
      place: l.layer.namePlace,
      layer: l.layer.index,
      related: [{ message: `${labelAtStart(upper.layer)} lies on it`, place: upper.layer.namePlace }],
    };
  },
};
